import {describe, expect, test} from "vitest";
import {includedPantry} from "../../lib/pantry/included.ts";
import {changesSince, changesWords} from "../../notebooks/kit/book/difference.ts";

const pantry = includedPantry();
const recipe = (text: string, rest = {}) => ({name: "Milk ice", text, notes: "", ...rest});

describe("what has become of an earlier version", () => {
  const cases: [string, string, string, string[]][] = [
    ["an amount", "600 g milk\n150 g sugar", "600 g milk\n140 g sugar", ["sugar 150 g → 140 g"]],
    ["something new", "600 g milk", "600 g milk\n3 g salt", ["salt 3 g added"]],
    ["something gone", "600 g milk\n0.5 g salt", "600 g milk", ["salt 0.5 g left out"]],
    ["two lines of one thing are one", "100 g sugar\n50 g sugar", "sugar 145 g", ["sugar 150 g → 145 g"]],
    // 1 lb is 453.59237 g (international pound, NIST SP 811, Appendix B).
    ["pounds and grams", "1 lb sugar", "500 g sugar", ["sugar 453.6 g → 500 g"]],
    [
      "the same, in other words",
      "150 g sugar\n600 g milk",
      "milk 600 g\nsugar: 0.15 kg",
      ["the same amounts, written otherwise"],
    ],
    [
      "a line that nobody can read, by its text",
      "600 g milk\n20 g qwertz",
      "600 g milk\n20 g sugar",
      ["sugar 20 g added", "“20 g qwertz” left out"],
    ],
    [
      "a step",
      "600 g milk\nMethod:\nHeat to 82 °C.",
      "600 g milk\nMethod:\nHeat to 85 °C.",
      ["“Heat to 82 °C.” left out", "“Heat to 85 °C.” added"],
    ],
    ["a price", "600 g milk @ 1.05", "600 g milk @ 1.10", ["price of milk changed"]],
    ["a text that is no recipe at all", "{", "600 g milk", ["milk 600 g added", "“{” left out"]],
  ];
  test.each(cases)("%s", async (_, before, after, changes) => {
    expect(await changesSince(recipe(before), recipe(after), pantry)).toEqual(changes);
  });

  test("name, freezer, air and notes", async () => {
    const before = recipe("600 g milk", {freezer: -18});
    const after = {...recipe("600 g milk", {freezer: -14, overrun: 40}), name: "Ice", notes: "Softer."};
    expect(await changesSince(before, after, pantry)).toEqual([
      "name “Milk ice” → “Ice”",
      "freezer −18 °C → −14 °C",
      "overrun not said → 40 %",
      "notes changed",
    ]);
    expect(await changesSince(before, before, pantry)).toEqual([]);
    // A title in the text that is the name is no line beside it.
    const titled = {...recipe("Ice\n600 g milk"), name: "Ice"};
    expect(await changesSince(recipe("Milk ice\n600 g milk"), titled, pantry)).toEqual([
      "name “Milk ice” → “Ice”",
    ]);
  });

  test("a sentence tells six, and counts what is more than one beyond", () => {
    expect(changesWords([])).toBe("The same as today.");
    expect(changesWords(["sugar 150 g → 140 g", "notes changed"])).toBe(
      "Since then: sugar 150 g → 140 g; notes changed.",
    );
    const letters = [..."abcdefgh"];
    expect(changesWords(letters.slice(0, 7))).toBe("Since then: a; b; c; d; e; f; g.");
    expect(changesWords(letters)).toBe("Since then: a; b; c; d; e; f; 2 more.");
  });
});
