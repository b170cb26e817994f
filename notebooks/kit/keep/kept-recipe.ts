import * as z from "zod/mini";
import {InputError, printable} from "../../../lib/core/errors.ts";
import {parse} from "../../../lib/core/schema.ts";

/** Parts of a recipe that a cook sees and may change. */
export interface RecipeContent {
  /** One line of at most 80 characters, without signs that turn or hide text. */
  readonly name: string;
  /** The recipe as the cook typed it, for `readTypedRecipe`: this is the recipe, all else is worked out from it. */
  readonly text: string;
  /** The cook's own remarks. */
  readonly notes: string;
  /** Freezer that it is served from, °C, -40 to 0. */
  readonly freezer?: number;
  /** Air beaten in, %, 0 to 200. */
  readonly overrun?: number;
}

/** A recipe as it was at a time. */
export interface EarlierVersion extends RecipeContent {
  /** When it was written, ISO 8601 in UTC. */
  readonly changed: string;
}

/** A recipe of the book. */
export interface KeptRecipe extends EarlierVersion {
  /** 8 to 64 small letters, figures and hyphens; the same for good, on every machine. */
  readonly id: string;
  /** Grows by 1 with each change, from 1. */
  readonly revision: number;
  /** Earlier versions, the latest first. */
  readonly earlier: readonly EarlierVersion[];
  /** When it was deleted, ISO 8601; it can be brought back for 30 days. */
  readonly deleted?: string;
}

/** Longest recipe that is kept, characters: the reader takes no more. */
export const LONGEST_TEXT = 200_000;

/** Longest remarks, characters. */
export const LONGEST_NOTES = 20_000;

/** Most earlier versions that a recipe may have where it is read; a change keeps fewer. */
export const MOST_READ = 60;

/** Highest revision: beyond it they are no longer counted apart. */
const MOST_REVISIONS = 1e12;

const LONGEST_NAME = 80;

/** Name of a recipe that has none. */
export const UNNAMED = "My recipe";

const text = (most: number) => z.string().check(z.maxLength(most));
const time = () =>
  z.string().check(
    z.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{1,3})?Z$/, "give a time such as 2026-07-01T12:00:00Z"),
    z.refine((written) => Number.isFinite(Date.parse(written)), "give a day and an hour that exist"),
  );
const version = {
  name: text(500),
  text: text(LONGEST_TEXT),
  notes: z.optional(text(LONGEST_NOTES)),
  freezer: z.optional(z.number().check(z.gte(-40), z.lte(0))),
  overrun: z.optional(z.number().check(z.gte(0), z.lte(200))),
  changed: time(),
};
const versionSchema = z.object(version);
const recipeSchema = z.object({
  ...version,
  id: z.string().check(z.regex(/^[a-z0-9-]{8,64}$/, "give 8 to 64 small letters, figures or hyphens")),
  revision: z
    .number()
    .check(z.gte(1), z.lte(MOST_REVISIONS), z.refine(Number.isInteger, "give a whole number")),
  earlier: z.optional(z.array(versionSchema).check(z.maxLength(MOST_READ))),
  deleted: z.optional(time()),
});
const KEYS = Object.keys(recipeSchema.shape);

/**
 * A recipe from wherever it was: the browser's storage, a file, a link. What it says beside is left out.
 *
 * @param place what it is called in errors
 * @throws InputError naming place, value and next step
 */
export function readKept(value: unknown, place: string): KeptRecipe {
  const {id, revision, earlier = [], deleted, ...rest} = parse(recipeSchema, value, place, KEYS);
  return {
    ...versionOf(rest),
    id,
    revision,
    earlier: earlier.map(versionOf),
    ...(deleted !== undefined && {deleted}),
  };
}

/**
 * A version of a recipe from wherever it was, checked.
 *
 * @param place what it is called in errors
 * @throws InputError naming place, value and next step
 */
export function readVersion(value: unknown, place: string): EarlierVersion {
  return versionOf(parse(versionSchema, value, place, KEYS));
}

/** Name of a broken recipe: its own where it has one, else its place. */
export function nameOfBroken(value: unknown, key: string): string {
  const name =
    typeof value === "object" && value !== null && Object.hasOwn(value, "name")
      ? (value as {name: unknown}).name
      : undefined;
  return oneName(typeof name === "string" && name.trim() ? name : key);
}

/** A name on one line, without signs that turn or hide text; `My recipe` where nothing is left. */
export function oneName(name: string): string {
  const plain = printable(name.slice(0, 500)).replace(/\s+/g, " ").trim();
  return [...plain].slice(0, LONGEST_NAME).join("").trim() || UNNAMED;
}

/** The title of a recipe: its first line, where that holds no figure and is no row of a table. */
export function titleOf(text: string): string | undefined {
  const [first = "", second = ""] = text
    .split("\n", 50)
    .map((line) => line.trim())
    .filter(Boolean);
  if (/[\d½⅓⅔¼¾⅛\t|;{}[\]]/u.test(first) || (first.includes(",") && second.includes(","))) return undefined;
  const bare = first.replace(/^[#*_\s]+|[#*_:\s]+$/g, "");
  return bare && !/^ingredients?$/i.test(bare) ? oneName(bare) : undefined;
}

/** Content that may be kept: the name on one line, numbers only within their range. */
export function contentOf({
  name,
  text,
  notes = "",
  freezer,
  overrun,
}: Partial<RecipeContent> & {readonly text: string}): RecipeContent {
  if (text.length > LONGEST_TEXT)
    throw new InputError("recipe", "too long", `${text.length} characters`, `give at most ${LONGEST_TEXT}`);
  if (notes.length > LONGEST_NOTES)
    throw new InputError("notes", "too long", `${notes.length} characters`, `give at most ${LONGEST_NOTES}`);
  return {
    name: oneName(name ?? ""),
    text,
    notes,
    ...(within(freezer, -40, 0) && {freezer}),
    ...(within(overrun, 0, 200) && {overrun}),
  };
}

/** Whether a cook would see no difference. */
export function sameContent(a: RecipeContent, b: RecipeContent): boolean {
  return (
    a.name === b.name &&
    a.text === b.text &&
    a.notes === b.notes &&
    a.freezer === b.freezer &&
    a.overrun === b.overrun
  );
}

/** The revision after one. */
export function nextRevision(revision: number): number {
  return Math.min(revision + 1, MOST_REVISIONS);
}

function within(value: number | undefined, min: number, max: number): value is number {
  return value !== undefined && value >= min && value <= max;
}

function versionOf({changed, ...content}: z.infer<typeof versionSchema>): EarlierVersion {
  const {name, text, notes = "", freezer, overrun} = content;
  return {
    name: oneName(name),
    text,
    notes,
    ...(freezer !== undefined && {freezer}),
    ...(overrun !== undefined && {overrun}),
    changed,
  };
}
