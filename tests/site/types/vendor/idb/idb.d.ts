export function openDB(name: string, version: number, hooks: {
  upgrade(opened: any): void;
  blocking?(version: number, older: number | null, event: any): void;
  terminated?(): void;
}): Promise<any>;
