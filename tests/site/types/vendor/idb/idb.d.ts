export function openDB(name: string, version: number, hooks: {
  upgrade(opened: any): void;
  blocking?(version: number, older: number | null, event: any): void;
  terminated?(): void;
}): Promise<any>;
export function deleteDB(name: string, hooks?: { blocked?(): void }): Promise<void>;
