import type {Alternative, NoticedChange, Substitution} from "../../balance/substitute/substitution-types.ts";
import {printable} from "../../core/errors.ts";
import {cell, right, wrap, wrapWords} from "./report-lines.ts";
import {decimal, grams} from "../../core/format.ts";
import {plainName} from "../text/plain-name.ts";
import {recipeComposition} from "../../pantry/recipe.ts";
import {unauthorisedCautions} from "../../pantry/unauthorised.ts";

/**
 * Ways round an ingredient that is out, as a cook reads them at the bench.
 *
 * @param most largest number of alternatives; 3 by default
 */
export function substitutionText(result: Substitution, most = 3): string {
  const {before, without, alternatives, notCompared, cutShort} = result;
  const head = `${printable(before.name)} ${outOf(result)} ${printable(without)}`;
  const shown = alternatives.slice(0, most);
  return [
    `${head}\n${"=".repeat(head.length)}`,
    ...(shown.length
      ? shown.map(alternativeText)
      : [
          cutShort
            ? "No way was found in the time given; allow more."
            : "Nothing on the shelf can stand in for it.",
        ]),
    ...(alternatives.length > shown.length
      ? [`and ${alternatives.length - shown.length} more, each with a higher score`]
      : []),
    ...(cutShort && shown.length ? ["Time was up before every way was tried; a better one may exist."] : []),
    ...(notCompared.length
      ? [
          `Not compared, for want of figures: ${notCompared
            .map((what) => (what === "cost" ? `cost${unpriced(result)}` : plainName(what)))
            .join(", ")}`,
        ]
      : []),
  ].join("\n\n");
}

/** The ingredients whose price is missing, in brackets: at most five. */
function unpriced({before, alternatives}: Substitution): string {
  const names = new Set(
    [before, ...alternatives.map(({recipe}) => recipe)].flatMap(({lines}) =>
      lines.flatMap(({ingredient: {name, price}, grams}) =>
        price === undefined && grams > 0 ? [printable(name)] : [],
      ),
    ),
  );
  const shown = [...names].slice(0, 5);
  return shown.length ? ` (no price for ${shown.join(", ")}${names.size > shown.length ? " …" : ""})` : "";
}

/** The shortage in words: the ingredient is out, or so much of it is left. */
function outOf({without, alternatives: [best]}: Substitution): string {
  const left = best?.amounts.find(({ingredient}) => ingredient === without)?.after ?? 0;
  return left > 0 ? `with only ${grams(left)} g of` : "without";
}

function alternativeText(alternative: Alternative, index: number): string {
  const {kind, by, amounts, changes, newAllergens, goneAllergens, flavours, score, legalName} = alternative;
  const instead = by.length ? `: ${listed(by.map(printable))}` : "";
  return [
    ...(newAllergens.length ? [`!! NEW ALLERGEN: ${newAllergens.join(", ")}`] : []),
    `${index + 1}. ${kind}${instead}`,
    `   score ${decimal(score, 2)} (the smaller, the less is noticed)`,
    ...amounts
      .filter(({change}) => Math.abs(change) >= 0.05)
      .map(
        ({ingredient, before, after}) =>
          `   ${cell(ingredient)} ${right(`${grams(before)} g`, 10)} -> ${right(`${grams(after)} g`, 9)}`,
      ),
    ...(changes.some(isNoticed)
      ? ["   what changes", ...changes.filter(isNoticed).map(changeLine)]
      : ["   nothing that is noticed changes"]),
    ...(goneAllergens.length ? [`   no longer contains ${goneAllergens.join(", ")}`] : []),
    ...unauthorisedCautions(recipeComposition(alternative.recipe)).flatMap((text) => wrapWords(text)),
    ...(flavours.lost.length ? wrap(` flavour lost: ${flavours.lost.map(printable).join(", ")}`) : []),
    ...(flavours.gained.length ? wrap(` flavour gained: ${flavours.gained.map(printable).join(", ")}`) : []),
    ...(legalName
      ? [
          `   ${printable(legalName.name)}: ${legalName.kept ? "still meets the name" : "no longer meets the name"}`,
        ]
      : []),
  ].join("\n");
}

/** Names as a phrase: "milk, cream and sugar". */
function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

function isNoticed({change}: NoticedChange): boolean {
  return Math.abs(change) >= 0.005;
}

function changeLine({what, unit, before, after, change}: NoticedChange): string {
  return `   ${cell(plainName(what))} ${right(decimal(before, 2), 10)} -> ${right(decimal(after, 2), 9)} ${unit}  (${change > 0 ? "+" : ""}${decimal(change, 2)})`;
}
