import type {BriefInput, IngredientInput} from "../../../lib/balance/brief/brief-schema.ts";
import type {Picked} from "../words/address-format.ts";

/** An entry of a brief's list of ingredients. */
type Entry = BriefInput["ingredients"][number];

/** A limit of a brief: g, or a percentage of the batch such as `"20 %"`. */
type Limit = number | string | undefined;

/** Digits that a limit keeps when it is converted: 7 g of 3 kg are 0.2333 %, and those are 7 g again, not 6.999. */
const DIGITS = {percent: 4, grams: 2};

/** Entry of a brief as the page has it, with the limits in percent of the batch or in g. */
export function pickedOf(entry: Entry, batch: number, unit: Picked["unit"] = "%"): Picked {
  const {name, min, max, price} = typeof entry === "string" ? ({name: entry} as IngredientInput) : entry;
  return picked(
    {name, unit, ...(price !== undefined && {price})},
    {
      min: inTerms(min, batch, unit),
      max: inTerms(max, batch, unit),
    },
  );
}

/** The same limits in another unit, at a batch of so many g. */
export function inUnit({min, max, unit, ...rest}: Picked, wanted: Picked["unit"], batch: number): Picked {
  const converted = (limit: number | undefined) =>
    limit === undefined ? undefined : inTerms(unit === "%" ? `${limit} %` : limit, batch, wanted);
  return picked({...rest, unit: wanted}, {min: converted(min), max: converted(max)});
}

/** Entry of an ingredient in a brief: percentages as such, so that they follow the batch. */
export function entryOf({min, max, unit, ...entry}: Picked): IngredientInput {
  const said = (limit: number) => (unit === "%" ? `${limit} %` : limit);
  return {
    ...entry,
    ...(min !== undefined && {min: said(min)}),
    ...(max !== undefined && {max: said(max)}),
  };
}

/** A limit as a number in a unit. */
function inTerms(limit: Limit, batch: number, unit: Picked["unit"]): number | undefined {
  if (limit === undefined) return undefined;
  const percent = typeof limit === "string" ? Number.parseFloat(limit) : undefined;
  if (unit === "%") return rounded(percent ?? (100 * Number(limit)) / batch, DIGITS.percent);
  return percent === undefined ? Number(limit) : rounded((percent * batch) / 100, DIGITS.grams);
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function picked(
  line: Omit<Picked, "min" | "max">,
  {min, max}: {readonly min: number | undefined; readonly max: number | undefined},
): Picked {
  return {...line, ...(min !== undefined && {min}), ...(max !== undefined && {max})};
}
