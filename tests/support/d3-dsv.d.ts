/** The one function of d3-dsv that the tests call: the package ships no types. */
declare module "d3-dsv" {
  export function csvParse(text: string): Record<string, string>[] & {columns: string[]};
}
