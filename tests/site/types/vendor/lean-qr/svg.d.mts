import { Code } from "./index.mjs";
export function toSvgPath(code: Code): string;
