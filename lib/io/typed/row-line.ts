import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Pantry} from "../../pantry/pantry.ts";
import type {TypedAmount} from "./amount.ts";
import {amountDoubt, brewDoubt} from "./doubtful.ts";
import type {EggGrades} from "./egg.ts";
import {knownName, slippedName, type TypedName} from "./name.ts";
import {numberFirst} from "./number.ts";
import {settledAmount} from "./own-weight.ts";
import type {TypedPrice} from "./price.ts";
import {type LineReading, splitLine, wholeAmount} from "./split-line.ts";
import type {TextRow} from "./text-rows.ts";
import type {CountedLine, TypedLine} from "./typed-line.ts";
import {weighLine} from "./weigh-line.ts";

/** Settings for reading a line. */
export interface ReadWith {
  readonly pantry: Pantry;
  readonly eggs: EggGrades;
  readonly adapt: (ingredient: Ingredient) => Ingredient;
}

/** Reading of one row of a text. */
export async function rowLine(row: TextRow, how: ReadWith): Promise<TypedLine> {
  const {line, text} = row;
  const split = row.cells ? (cellsOf(row) ?? splitLine(text)) : splitLine(text);
  const here = {line, text};
  const doubt = amountDoubt(text);
  if (doubt !== undefined) return {...here, status: "unknown", name: text, near: [], question: doubt};
  const best = bestOf(split.readings, how.pantry);
  if (!best)
    return {
      ...here,
      status: "unknown",
      name: text,
      near: [],
      question: "no ingredient was found in this line",
    };
  const {reading, name} = best;
  if (name.kind === "which")
    return {
      ...here,
      status: "which",
      name: reading.name,
      choices: name.choices,
      question: `which ${reading.name}: ${name.choices.join(", ")}?`,
    };
  if (name.kind === "unknown") {
    // An amount that stands in the name would go with it when another is picked.
    const offered = !reading.amount && /\d/.test(reading.name) ? [] : name.near;
    const near = offered.map((one) => JSON.stringify(one)).join(" or ");
    return {
      ...here,
      status: "unknown",
      name: reading.name,
      near: offered,
      question: `no ingredient called “${reading.name}” is known here. ${near ? `Did you mean ${near}?` : "Give it the name of something on the shelf"}`,
    };
  }
  const ingredient = how.adapt(name.ingredient);
  if (!reading.amount)
    return {
      ...here,
      status: "how much",
      ingredient,
      question: `how much ${ingredient.name}? No amount stands in the line`,
    };
  const settled = settledAmount(reading.amount, reading.notes, ingredient, how.pantry);
  if ("question" in settled) return {...here, status: "how much", ingredient, question: settled.question};
  const {amount} = settled;
  const brew = brewDoubt(ingredient, amount, reading.name, text);
  if (brew !== undefined) return {...here, status: "how much", ingredient, question: brew};
  const weighed = amount.percent
    ? {grams: 0, taken: []}
    : await weighLine(ingredient, amount, text, how.eggs);
  if ("question" in weighed) return {...here, status: "how much", ingredient, question: weighed.question};
  const taken = [...(name.taken === undefined ? [] : [name.taken]), ...weighed.taken];
  const priced = split.price ? await pricedLine(ingredient, split.price, text, how.eggs) : {};
  if ("question" in priced) taken.push(priced.question);
  const counted: CountedLine = {
    ingredient:
      "price" in priced && priced.price !== undefined ? {...ingredient, price: priced.price} : ingredient,
    grams: weighed.grams,
    called: reading.name,
    ...("whole" in weighed && weighed.whole !== undefined && {whole: weighed.whole}),
    ...(amount.percent && {percent: amount.count}),
    ...("question" in priced ? {} : priced),
  };
  return taken.length
    ? {...here, status: "taken", taken, ...counted}
    : {...here, status: "understood", ...counted};
}

/** The reading whose name is known best: a name found before a choice, a choice before an unknown name; with an amount before without. */
function bestOf(
  readings: readonly LineReading[],
  pantry: Pantry,
): {readonly reading: LineReading; readonly name: TypedName} | undefined {
  const rank = ({reading, name}: {reading: LineReading; name: TypedName}) =>
    (name.kind === "which" ? 1 : 0) +
    (name.kind === "found" && name.taken !== undefined ? 0.5 : 0) +
    (reading.amount === undefined ? 2 : reading.amount.percent ? 2.2 : 0);
  const known = readings.flatMap((reading, i) => {
    const name = knownName(pantry, reading.name, reading.notes);
    return name ? [{reading, name, order: rank({reading, name}) + i / 100}] : [];
  });
  const [best] = known.sort((one, other) => one.order - other.order);
  if (best) return best;
  // Only where nothing is known is the likeliest reading looked at for slips, which takes long.
  const [likeliest] = readings;
  return likeliest && {reading: likeliest, name: slippedName(pantry, likeliest.name)};
}

/** Readings of a row of a table, by its heading or by the look of its cells. */
function cellsOf({cells = [], columns}: TextRow): {readings: LineReading[]; price?: TypedPrice} | undefined {
  const at = (...wanted: string[]) => {
    const i = columns?.findIndex((column) => wanted.includes(column)) ?? -1;
    return i < 0 ? undefined : cells[i]?.replace(/^"|"$/g, "");
  };
  const name = at("name") ?? cells.find((cell) => /\p{L}{2}/u.test(cell) && !wholeAmount(cell));
  if (name === undefined || !/\p{L}/u.test(name)) return undefined;
  const amount = columns ? headedAmount(at) : looseAmount(cells, name);
  const money = at("price");
  const price = money === undefined ? undefined : numberFirst(money.replace(/^[£$€]\s*/, ""));
  const {readings} = splitLine(name);
  const plain = readings.at(-1);
  if (!plain) return undefined;
  if (!amount && !columns) return undefined;
  return {
    readings: [{...plain, ...(amount && {amount})}],
    ...(price && {price: {price: price.value, per: {count: 1, unit: "kg"}, before: name}}),
  };
}

function headedAmount(at: (...wanted: string[]) => string | undefined): TypedAmount | undefined {
  for (const [column, unit] of [
    ["grams", "g"],
    ["kilograms", "kg"],
    ["millilitres", "ml"],
  ] as const) {
    const cell = at(column);
    const found = cell === undefined ? undefined : wholeAmount(cell);
    if (!found) continue;
    // A cell may have its own unit.
    return found.unit === undefined ? {count: found.count, unit, taken: found.taken} : found;
  }
  const [cell, unit, percent] = [at("amount"), at("unit"), at("percent")];
  const found = cell === undefined ? undefined : wholeAmount(`${cell} ${unit ?? ""}`.trim());
  if (found) return found;
  const share = percent === undefined ? undefined : numberFirst(percent);
  return share && /^\s*%?$/.test(share.rest)
    ? {count: share.value, percent: true, taken: share.taken ? [share.taken] : []}
    : undefined;
}

/** Cells without a heading: one amount, or a number and its unit side by side; a mass before a volume before a share. */
function looseAmount(cells: readonly string[], name: string): TypedAmount | undefined {
  const found = cells.flatMap((cell, i) => {
    if (cell === name) return [];
    const joined =
      cells[i + 1] !== undefined && /^[\p{L}. ]{1,14}$/u.test(cells[i + 1]!)
        ? wholeAmount(`${cell} ${cells[i + 1]!}`)
        : undefined;
    const whole = joined?.unit !== undefined ? joined : wholeAmount(cell);
    return whole ? [whole] : [];
  });
  const measured = found.find(({unit}) => unit !== undefined);
  const number = found.find(({unit, percent, pack}) => unit === undefined && !percent && pack === undefined);
  return measured ?? number ?? found[0];
}

/** The price per kg or the pack of a line; a litre or a dozen in a price is weighed as in an amount. */
async function pricedLine(
  ingredient: Ingredient,
  {price, per: {count, unit}}: TypedPrice,
  written: string,
  eggs: EggGrades,
): Promise<Pick<CountedLine, "price" | "pack"> | {readonly question: string}> {
  if (count === 1 && unit === "kg") return {price};
  const weighed = await weighLine(
    ingredient,
    {count, taken: [], ...(unit !== undefined && {unit})},
    written,
    eggs,
  );
  return "question" in weighed
    ? {question: "its price is left out: nobody knows what that much of it weighs"}
    : {price: (1000 * price) / weighed.grams, pack: {price, grams: weighed.grams}};
}
