import {InputError} from "../../core/errors.ts";

/**
 * The text of a file's bytes.
 *
 * @param place the file's name, for errors
 * @throws InputError with the line for bytes that are not UTF-8, such as those of an older spreadsheet's CSV
 */
export function utf8Text(bytes: Uint8Array, place: string): string {
  try {
    return new TextDecoder("utf-8", {fatal: true}).decode(bytes);
  } catch {
    throw new InputError(
      `${place}, line ${lineOfMistake(bytes)}`,
      "not UTF-8 text",
      undefined,
      'save the file as UTF-8 (in a spreadsheet: "CSV UTF-8") and try again',
      {code: "unreadable"},
    );
  }
}

/** The line on which bytes stop being UTF-8; a line-break byte is never part of another character. */
function lineOfMistake(bytes: Uint8Array): number {
  const sound = new TextDecoder("utf-8", {fatal: true});
  let [line, start] = [1, 0];
  for (let end = bytes.indexOf(10); end >= 0; end = bytes.indexOf(10, start)) {
    try {
      sound.decode(bytes.subarray(start, end));
    } catch {
      return line;
    }
    start = end + 1;
    line++;
  }
  return line;
}
