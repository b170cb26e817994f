import type {OwnEntry} from "../keep/own-ingredients.ts";
import {FIGURE_WORDS, KINDS, US_WORDS} from "./packet-choices.ts";
import type {PacketTyped} from "./packet-form.ts";
import {ETHANOL, type ReadPacket, readPacket} from "./packet.ts";

/**
 * The product as it is kept, or what is still to be said.
 *
 * @param asked what it was called where it was not known
 * @param before the product as it was kept; what the form does not ask of it stays
 */
export function entryOf(typed: PacketTyped, asked: string, before?: OwnEntry): OwnEntry | string {
  if (typed.name === "") return "It has no name yet: write what you call it.";
  if (!typed.chosen)
    return "What is it like? Choose the class that is nearest: it says which sugars and fats these are.";
  const {label, missing, slips} = readPacket(typed);
  if (slips[0]) return slips.map(({words}) => words).join(" ");
  if (!label) return `${neededWords(missing, typed.law)}: read it off the packet, 0 where it says so.`;
  const kinds = (["gluten", "nuts"] as const).filter(
    (allergen) =>
      typed.allergens.includes(allergen) && !KINDS[allergen]!.some((kind) => typed.kinds.includes(kind)),
  );
  if (kinds[0])
    return kinds[0] === "nuts"
      ? "Which nuts? Tick each that its list of ingredients names: a label must name them."
      : "Which cereals? Tick each that its list of ingredients names: a label must name them.";
  const {name, allergens, law, per, figures} = typed;
  // The kinds stand where the label looks for them; what it was called before stays one of its names.
  const names = (before?.aliases ?? []).filter((alias) => !alias.startsWith(`${before!.name} (`));
  const aliases = [
    ...new Set([
      ...names,
      ...(asked.trim() && asked.trim() !== name ? [asked.trim()] : []),
      ...(typed.kinds.length ? [`${name} (${typed.kinds.join(", ")})`.slice(0, 200)] : []),
    ]),
  ];
  const {composition: _, label: __, aliases: ___, allergens: ____, density: _____, ...further} = before ?? {};
  return {
    ...further,
    name,
    label,
    packet: {law, per, figures},
    ...(aliases.length && {aliases}),
    ...(allergens.length && {allergens}),
    ...(figures.density !== undefined && {density: figures.density}),
  };
}

/** Entries of the form for an ingredient that is kept: those read off its packet, or else its label per 100 g. */
export function typedOf({
  name,
  label,
  packet,
  aliases = [],
  allergens = [],
  density,
}: OwnEntry): Partial<PacketTyped> {
  const {class: read, alcohol, ...figures} = label ?? ({} as NonNullable<OwnEntry["label"]>);
  const kinds = /\(([^()]*)\)$/.exec(aliases.find((alias) => alias.startsWith(`${name} (`)) ?? "")?.[1];
  return {
    name,
    allergens,
    kinds: kinds?.split(", ") ?? [],
    ...(packet ?? {
      figures: {
        ...figures,
        ...(density !== undefined && {density}),
        ...(alcohol !== undefined && {alcohol: Number(((alcohol * (density ?? 1)) / ETHANOL).toFixed(2))}),
      },
    }),
    ...(label && {class: read, chosen: true}),
  };
}

/** Figures still to be read off, in words. */
export function neededWords(missing: ReadPacket["missing"], law: PacketTyped["law"]): string {
  const names = missing.map((figure) =>
    ((law === "US" ? US_WORDS[figure] : undefined) ?? FIGURE_WORDS[figure][0])
      .replace(/^of which /, "")
      .toLowerCase(),
  );
  return `Still to read off: ${names.join(", ")}`;
}
