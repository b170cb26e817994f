// What a notebook cell sees besides the names of other cells.
declare const width: number;
declare const dark: boolean;
declare const Plot: typeof import("@observablehq/plot");
declare function FileAttachment(name: string): {text(): Promise<string>; json(): Promise<unknown>};
declare function view<T>(input: HTMLElement & {value: T}): T;
declare function display<T>(value: T): T;
declare function md(strings: TemplateStringsArray, ...values: unknown[]): HTMLElement;
declare function html(strings: TemplateStringsArray, ...values: unknown[]): HTMLElement;

declare module "htl" {
  /** Escapes every value: text stays text. */
  export function html(strings: TemplateStringsArray, ...values: unknown[]): HTMLElement;
  export function svg(strings: TemplateStringsArray, ...values: unknown[]): SVGElement;
}
