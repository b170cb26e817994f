/** Tokens that may come next in a JSON text. */
type Wants = "value" | "value or end" | "key" | "key or end" | "colon" | "comma or end" | "nothing";

/** A bracket, a sign or a word. */
const TOKEN = /[[\]{},:]|[^\s[\]{},:"]+/y;
const BLANKS = /[ \t\r\n]*/y;

/**
 * Position at which a text stops being JSON: the first character of a token that is not allowed there, or the end of a text that
 * breaks off. JavaScript engines give it for some mistakes only.
 *
 * @param json a text that is no JSON (RFC 8259)
 */
export function mistakeIn(json: string): number {
  const inside: string[] = [];
  let wants: Wants | undefined = "value";
  for (let at = 0; ;) {
    BLANKS.lastIndex = at;
    at += BLANKS.exec(json)![0].length;
    const token = tokenAt(json, at);
    wants = after(token, wants, inside);
    if (wants === undefined) return at;
    at += token.length;
  }
}

/** The number with a decimal point, where a mistake is the second half of one with a decimal comma. */
export function decimalCommaAt(json: string, at: number): string | undefined {
  const whole = /-?\d+(?=,$)/.exec(json.slice(Math.max(0, at - 20), at))?.[0];
  const decimals = /^\d+/.exec(json.slice(at, at + 20))?.[0];
  return whole !== undefined && decimals !== undefined ? `${whole}.${decimals}` : undefined;
}

/** The token at a position: a text up to its closing quote or the end; a blank unknown to JSON is a token too. */
function tokenAt(json: string, at: number): string {
  if (json[at] === '"') return json.slice(at, textEnd(json, at + 1));
  TOKEN.lastIndex = at;
  return TOKEN.exec(json)?.[0] ?? json.charAt(at);
}

function textEnd(json: string, from: number): number {
  for (let i = from; i < json.length; i++) {
    if (json[i] === "\\") i++;
    else if (json[i] === '"') return i + 1;
  }
  return json.length;
}

/** Tokens that may follow a token; `undefined` where the token itself is not allowed. */
function after(token: string, wants: Wants, inside: string[]): Wants | undefined {
  if (token === "[" || token === "{") {
    if (!wants.startsWith("value")) return undefined;
    inside.push(token);
    return token === "[" ? "value or end" : "key or end";
  }
  if (token === "]" || token === "}") {
    const opened = wants.endsWith("or end") && inside.pop() === (token === "]" ? "[" : "{");
    return opened ? afterValue(inside) : undefined;
  }
  if (token === ",") return wants === "comma or end" ? (inside.at(-1) === "[" ? "value" : "key") : undefined;
  if (token === ":") return wants === "colon" ? "value" : undefined;
  if (!isJson(token)) return undefined;
  if (wants.startsWith("key")) return token.startsWith('"') ? "colon" : undefined;
  return wants.startsWith("value") ? afterValue(inside) : undefined;
}

function afterValue(inside: readonly string[]): Wants {
  return inside.length ? "comma or end" : "nothing";
}

function isJson(token: string): boolean {
  try {
    JSON.parse(token);
    return true;
  } catch {
    return false;
  }
}
