export interface TemplateResult { strings: TemplateStringsArray; values: unknown[] }
export function html(strings: TemplateStringsArray, ...values: unknown[]): TemplateResult;
export function svg(strings: TemplateStringsArray, ...values: unknown[]): TemplateResult;
export const nothing: unique symbol;
export function render(content: unknown, place: Element | DocumentFragment): unknown;
