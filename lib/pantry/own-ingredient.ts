import {InputError} from "../core/errors.ts";
import {readComposition} from "./composition.ts";
import {fromLabel, type IngredientClass} from "./from-label.ts";
import {withInferred} from "./inferred.ts";
import type {Allergen, Ingredient} from "./ingredient.ts";
import type {Label} from "./read-label.ts";

/** Fields by which an ingredient of a brief, a recipe or a pantry may say what is in it. */
export interface OwnFigures {
  readonly name: string;
  /** g per 100 g by part or shorthand. */
  readonly composition?: object | undefined;
  /** g per 100 g as on the packet, and the class to read it by. */
  readonly label?:
    | ({readonly class: IngredientClass} & {
        readonly [Figure in keyof Omit<Label, "name">]: Label[Figure] | undefined;
      })
    | undefined;
  readonly group?: string | undefined;
  readonly allergens?: readonly Allergen[] | undefined;
}

/**
 * Refuses a dextrose equivalent that stands beside the composition: it is of the glucose-syrup solids in it.
 *
 * @param entry an ingredient as it was written, before it is checked
 * @param place where it stands, e.g. `brief.json: ingredients[2]`
 * @throws InputError that says where it belongs
 */
export function refuseLooseEquivalent(entry: unknown, place: string): void {
  if (typeof entry !== "object" || entry === null || !Object.hasOwn(entry, "dextroseEquivalent")) return;
  const {dextroseEquivalent} = entry as {dextroseEquivalent: unknown};
  throw new InputError(
    `${place}.dextroseEquivalent`,
    "beside the composition",
    dextroseEquivalent,
    'write it inside: "composition": {"glucoseSyrupSolids": …, "dextroseEquivalent": …}',
  );
}

/**
 * An ingredient of one's own: its composition as given or from its label, with what is evident of it (see `withInferred`);
 * nothing where it gives neither.
 *
 * @param place where the ingredient stands, for errors, e.g. `brief.json: ingredients[2]`
 * @throws InputError for both at once, and as `readComposition` and `fromLabel`
 */
export function ownIngredient(
  {name, composition, label, group, allergens}: OwnFigures,
  place: string,
): Ingredient | undefined {
  const said = {...(group !== undefined && {group}), ...(allergens && {allergens})};
  if (label === undefined)
    return (
      composition &&
      withInferred({
        name,
        composition: readComposition(composition, `${place} "${name}": composition`),
        ...said,
      })
    );
  if (composition !== undefined)
    throw new InputError(
      `${place} "${name}": label`,
      "given beside composition",
      undefined,
      "give one of them",
    );
  const {class: read, ...figures} = label;
  try {
    const {ingredient} = fromLabel({...(figures as Omit<Label, "name">), name}, read);
    const {composition: parts, nutrients = {}} = ingredient;
    return withInferred({name, composition: parts, nutrients, grade: "label", ...said}, read);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(`${place}: ${error.place}`, error.problem, error.value, error.advice);
  }
}
