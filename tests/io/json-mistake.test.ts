import * as fc from "fast-check";
import {readPantryCsv} from "../../lib/io/csv/pantry-csv.ts";
import {readComposition} from "../../lib/pantry/composition.ts";
import {readIngredient} from "../../lib/io/json/ingredient-json.ts";
import {describe, expect, test} from "vitest";
import {parseJson} from "../../lib/io/json/json.ts";
import {mistakeIn} from "../../lib/io/json/json-mistake.ts";

/** Where the engine says that a text stops being JSON; it does not always say so. */
function byEngine(json: string): number | "end" | undefined {
  try {
    JSON.parse(json);
    return undefined;
  } catch (error) {
    const {message} = error as Error;
    const position = /at position (\d+)/.exec(message)?.[1];
    return message.includes("end of JSON") ? "end" : position === undefined ? undefined : Number(position);
  }
}

describe("where a text stops being JSON", () => {
  // By the grammar of RFC 8259.
  test.each([
    ["a bracket that closes nothing", '{"a": 1,\n "b": [}', 16],
    ["a comma before the end", "[1, 2, ]", 7],
    ["a word", '{"a": yes}', 6],
    ["single quotes", "{'a': 1}", 1],
    ["a number as a key", '{"a": 1, 2: 3}', 9],
    ["a number with a leading zero", "[01]", 1],
    ["a hard blank", "[1,\u00A02]", 3],
    ["a text that is never closed", '["a", "b]', 6],
    ["a line break in a text", '{"a": "b\n"}', 6],
    ["an end too early", '{"a": [1 ', 9],
    ["something after the end", "{} {}", 3],
    ["nothing", "", 0],
  ])("%s", (_, json, at) => {
    expect(mistakeIn(json)).toBe(at);
  });

  test("is where the engine says, or the start of the text or word there", () => {
    let compared = 0;
    const spoilt = fc
      .tuple(fc.json(), fc.nat(), fc.constantFrom("", "]", "}", ",", ":", '"', "x", "1", "[", "\n", "\\"))
      .map(
        ([json, at, put]) =>
          json.slice(0, at % (json.length + 1)) + put + json.slice((at % (json.length + 1)) + 1),
      );
    fc.assert(
      fc.property(spoilt, (json) => {
        const said = byEngine(json);
        if (said === undefined) return;
        compared++;
        const found = mistakeIn(json);
        const theirs = said === "end" ? json.length : said;
        const between = json.slice(found, theirs);
        expect(found).toBeLessThanOrEqual(theirs);
        // Within a text anything may stand between, within a word no blank or sign.
        expect(between).toMatch(/^(?:"[\s\S]*|[^\s[\]{},:"]*)$/);
      }),
      {numRuns: 500, seed: 1},
    );
    expect(compared).toBeGreaterThan(200);
  });
});

describe("what is said of a text that is no JSON", () => {
  const long = `{"name": "paste", "label": {"class": "nut", "fat": 60, "carbohydrate": 17, "salt": 0,05, "protein": 15, "fibre": 8}}`;
  test.each([
    [
      "a decimal comma far along a line",
      long,
      'b.json, line 1, column 86: not valid JSON (got "…ate\\": 17, \\"salt\\": 0,05, \\"protein\\": 15, \\"…"); write a decimal point: 0.05',
    ],
    ["a decimal comma in a list", '{"a": [-1,05]}', "write a decimal point: -1.05"],
    ["a decimal comma at the end of an object", '{"a": 12,5}', "write a decimal point: 12.5"],
    ["a comma between two entries", '{"a": 12, 5: 3}', "mend the JSON there"],
    ["a short line", '{\n  "a": yes\n}', 'line 2, column 8: not valid JSON (got "\\"a\\": yes"); mend'],
  ])("%s", (_, json, says) => {
    expect(() => parseJson(json, "b.json")).toThrow(says);
  });
});

test("a label that lost its decimal point is told so, down to the figure", () => {
  const paste = (fat: number) => ({
    name: "paste",
    label: {class: "nut", fat, carbohydrate: 18, sugars: 7.5, protein: 21, salt: 0.02},
  });
  const read = (fat: number) => () => readIngredient(paste(fat), "paste.json");
  expect(read(520)).toThrow(/label\.fat: out of range \(got 520\).*decimal point missing \(52\)/);
  expect(read(1520)).toThrow(/label\.fat: out of range \(got 1520\); give a number at most 100$/);
});

test("so is a composition, in JSON, in a call and in CSV", () => {
  const point = /milkFat(_g)?: out of range \(got 350\).*decimal point missing \(35\)/;
  const composition = {water: 88, milkFat: 350, msnf: 8.5};
  expect(() => readIngredient({name: "milk", composition}, "milk.json")).toThrow(point);
  expect(() => readComposition(composition)).toThrow(point);
  expect(() => readPantryCsv("name,water_g,milkFat_g,msnf_g\nmilk,88,350,8.5\n")).toThrow(point);
});
