import {expect, test} from "vitest";
import {readTypedRecipe} from "../../lib/io/typed/read-typed.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {titled} from "../../notebooks/kit/words/titled.ts";

test("a recipe keeps its name, an ingredient's too, and no line of it is asked about", async () => {
  const pantry = includedPantry();
  for (const name of ["Chocolate", "Vanilla", "Hazelnut", "Our best custard"]) {
    const {recipe, lines} = await readTypedRecipe(
      titled(name, "500 g whole milk\n100 g sugar", pantry),
      pantry,
    );
    expect([recipe.name, ...lines.map(({status}) => status)]).toEqual([
      name,
      "skipped",
      "understood",
      "understood",
    ]);
  }
});
