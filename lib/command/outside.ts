import {InputError, printable, show} from "../core/errors.ts";
import {utf8Text} from "../io/text/utf8.ts";

/** Everything outside the program that the command uses: files, its two streams, and where it is installed. */
export interface Outside {
  /** Bytes of a file; those of standard input for `-`. */
  readonly read: (path: string) => Uint8Array;
  readonly write: (path: string, text: string) => void;
  /** Writes to standard output. */
  readonly say: (text: string) => void;
  /** Writes to standard error. */
  readonly note: (text: string) => void;
  /** Path of the pantry that is used when none is named: the ingredients that come with this package. */
  readonly pantry: string;
  /** Path of the `package.json` that has the version. */
  readonly package: string;
}

/** Name of an input in messages. */
export function placeOf(file: string): string {
  return file === "-" ? "standard input" : file;
}

/**
 * Text of a file.
 *
 * @throws InputError for a file that cannot be read, or is no UTF-8
 */
export function textOf(path: string, {read}: Outside): string {
  let bytes: Uint8Array;
  try {
    bytes = read(path);
  } catch (error) {
    throw fileError(path, error);
  }
  return utf8Text(bytes, placeOf(path));
}

/**
 * Writes to a file where an option names one, and says so.
 *
 * @throws InputError for a file that cannot be written
 */
export function writeOut(path: string | undefined, content: () => string, {write, note}: Outside): void {
  if (path === undefined) return;
  try {
    write(path, content());
    note(`wrote ${printable(path)}\n`);
  } catch (error) {
    throw error instanceof InputError ? error : fileError(path, error);
  }
}

/** Says that a file which an option names was not written, and why. */
export function notWritten(path: string | undefined, why: string, {note}: Outside): void {
  if (path !== undefined) note(`${printable(`${path}: not written, because ${why}`)}\n`);
}

function fileError(path: string, error: unknown): InputError {
  const {code} = error as {readonly code?: string};
  const problem =
    code === "ENOENT"
      ? "no such file or folder"
      : code === "EISDIR"
        ? "a folder, not a file"
        : `cannot be used (${show(code)})`;
  return new InputError(path, problem, undefined, "check the path");
}
