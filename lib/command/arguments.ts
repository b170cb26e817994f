import {InputError} from "../core/errors.ts";
import {type Making, WAYS_OF_MAKING} from "../kitchen/cooking/base-process.ts";
import {OPTIONS, OPTIONS_OF} from "./usage.ts";

/** A command by its name. */
export type Command = keyof typeof OPTIONS_OF;

/** The options of a command line. */
export type Options = {
  -readonly [Name in keyof typeof OPTIONS]?: (typeof OPTIONS)[Name] extends {multiple: true}
    ? string[]
    : (typeof OPTIONS)[Name] extends {type: "string"}
      ? string
      : boolean;
};

/**
 * The command that is asked for; each of its options must be one of its own.
 *
 * @throws InputError for no command, an unknown one, an option of another command, and an output that is no file
 */
export function commandOf(name: string, options: Options): Command {
  if (!Object.hasOwn(OPTIONS_OF, name))
    throw new InputError(
      "command",
      name ? "unknown" : "missing",
      name || undefined,
      `use ${COMMANDS.join(", ")}; see mixwright --help`,
    );
  for (const option of Object.keys(options)) {
    const owners = COMMANDS.filter((command) => Object.hasOwn(OPTIONS_OF[command], option));
    if (owners.length && !owners.includes(name as Command))
      throw new InputError(
        `--${option}`,
        `not an option of ${name}`,
        undefined,
        `leave it out; it belongs to ${owners.join(" and ")}`,
      );
  }
  for (const option of WRITTEN) {
    if (options[option] !== "-" && options[option] !== "") continue;
    throw new InputError(
      `--${option}`,
      "not the name of a file",
      options[option],
      "name a file to write; only the report goes to standard output",
    );
  }
  return name as Command;
}

/** Options that name a file to be written. */
const WRITTEN = ["recipe", "csv", "markdown", "html", "svg", "panel"] as const;

const COMMANDS = Object.keys(OPTIONS_OF) as Command[];

/**
 * The number that an option gives.
 *
 * @throws InputError naming the option for no number, or one out of range
 */
export function numberOf(option: string, given: string, min: number, max: number): number {
  const value = Number(given);
  if (given.trim() !== "" && value >= min && value <= max) return value;
  throw new InputError(option, "no number in range", given, `give a number from ${min} to ${max}`);
}

/**
 * Milliseconds that a command may take: 10 s unless `--deadline` says otherwise.
 *
 * @throws InputError for no number of seconds from 0.01 to 86,400
 */
export function timeOf({deadline = "10"}: Options): number {
  return 1000 * numberOf("--deadline", deadline, 0.01, 86_400);
}

/**
 * The way of making a base that `--way` names.
 *
 * @throws InputError for an unknown one
 */
export function wayOf(given = "custard"): Making["way"] {
  if (Object.hasOwn(WAYS_OF_MAKING, given)) return given as Making["way"];
  throw new InputError("--way", "unknown", given, `use ${Object.keys(WAYS_OF_MAKING).join(", ")}`);
}
