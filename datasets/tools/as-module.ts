/** Parts of the tools that write a table of a CSV file as a module. */
import {readFileSync} from "node:fs";
import {fileURLToPath} from "node:url";
import {format, type FormatConfig} from "oxfmt";

const settings = JSON.parse(
  readFileSync(new URL("../../.oxfmtrc.json", import.meta.url), "utf8"),
) as FormatConfig;

/** Plain data as a literal of the language: keys without quotes where they need none. */
export function asLiteral(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(asLiteral).join(", ")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).map(
    ([key, held]) => `${/^[A-Za-z]\w*$/.test(key) ? key : JSON.stringify(key)}: ${asLiteral(held)}`,
  );
  return `{${entries.join(", ")}}`;
}

/** A list in a cell, parted by semicolons, under a key; nothing for an empty cell. */
export function list(key: string, cell: string | undefined): Record<string, string> {
  return cell ? {[key]: cell} : {};
}

/** A module's text as the house formats it. */
export async function formatted(text: string, module: URL): Promise<string> {
  const {code, errors} = await format(fileURLToPath(module), text, settings);
  if (errors.length > 0) throw new Error(errors.map(({message}) => message).join("\n"));
  return code;
}
