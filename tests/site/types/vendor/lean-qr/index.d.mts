export interface Code { size: number; get(x: number, y: number): boolean }
export function generate(text: string): Code;
