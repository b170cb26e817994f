import {describe, expect, test} from "vitest";
import type {Balanced} from "../../lib/balance/mix/answer.ts";
import {balance} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {candidatesOf, distance} from "../../lib/balance/explain/candidates.ts";
import {openedPacks, outlayOf} from "../../lib/balance/program/packs.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {reliability} from "../../lib/balance/weigh/reliability.ts";
import {solveBrief} from "../../lib/balance/mix/solve-brief.ts";
import {missedBy} from "../../lib/io/report/weighable-sections.ts";
import {type Missed, weighable} from "../../lib/balance/weigh/weighable.ts";
import {loadHighs} from "../../lib/lp/engines/engine-highs.ts";
import {dataset, demoPantry, realPantry} from "../support/pantry.ts";
import {randomBrief} from "../support/random-brief.ts";
import {within} from "../support/within.ts";

const demo = JSON.parse(dataset("demo/pear-base.json")) as BriefInput;

function solved(
  input: BriefInput,
  pantry = demoPantry,
): {brief: ReturnType<typeof readBrief>; mix: Balanced} {
  const brief = readBrief(input, pantry);
  const mix = solveBrief(brief);
  if (mix.status !== "optimal") throw new Error(mix.status);
  return {brief, mix};
}

const grams = ({amounts}: Pick<Balanced, "amounts">) => amounts.map((amount) => amount.grams);

describe("weighable amounts", () => {
  test("miss an exact value by no more than a report shows of it: 16.5 for 16.54 is kept, 16.8 is not", () => {
    const {brief, mix} = solved({
      ingredients: [
        {name: "water", price: 0},
        {name: "sucrose", price: 1},
      ],
      targets: {sucrose: {equal: 16.54}},
    });
    // In steps of 5 g, 165 g of 1000 are 16.5; in steps of 10 g the nearest is 170 g of 1010, 16.83.
    expect(weighable(brief, grams(mix), {scale: 5}).missed).toEqual([]);
    const [missed, ...others] = weighable(brief, grams(mix), {scale: 10}).missed;
    expect(others).toEqual([]);
    expect(missed).toMatchObject({target: "sucrose", bound: "equal", limit: 16.54});
    within(missed!.value, 16.83, 0.01, "sucrose, g per 100 g");
  });

  test.each([700, 1000, 5000, 12_345])(
    "of the demo base at %i g: whole yolks, steps of the scale, every target kept",
    (batch) => {
      const scaled = {
        ...demo,
        batch,
        ingredients: demo.ingredients.map((entry) =>
          typeof entry === "string"
            ? entry
            : {
                ...entry,
                min: (Number(entry.min ?? 0) * batch) / 5000,
                max: (Number(entry.max ?? 5000) * batch) / 5000,
              },
        ),
      };
      // 30 g of ginger in 5000 g is no round amount in other batches: let it vary.
      const {brief, mix} = solved({
        ...scaled,
        ingredients: scaled.ingredients.map((entry) =>
          typeof entry === "object" && entry.name === "fresh ginger"
            ? {...entry, max: entry.max! + 1}
            : entry,
        ),
      });
      const result = weighable(brief, grams(mix));
      expect(result.missed).toEqual([]);
      const yolks = result.amounts.find(({ingredient}) => ingredient === "egg yolk")!;
      expect(result.counts["egg yolk"]! * 17).toBe(yolks.grams);
      for (const {ingredient, grams} of result.amounts) {
        if (ingredient !== "egg yolk")
          within(grams * 10, Math.round(grams * 10), 1e-6, `${ingredient} in tenths of a gram`);
      }
      within(result.total, batch, 9, "total");
    },
  );

  test("keep the brief's ratio, and the least of what another ingredient needs", () => {
    const sweets = (more: object) => ({
      ingredients: [
        {name: "water", price: 0},
        {name: "sucrose", price: 1},
        {name: "dextrose", price: 2, ...more},
      ],
      targets: {},
    });
    const weighed = (more: object, amounts: number[]) =>
      grams(weighable(readBrief(sweets(more), realPantry), amounts, {scale: 1}));
    const [water, sugar, dextrose] = weighed({ratio: {to: "sucrose", grams: 0.5}}, [800, 150, 50]);
    within(water! + sugar! + dextrose!, 1000, 1, "total, g");
    within(dextrose, sugar! / 2, 1, "half of the sugar, to a step of the scale");
    // By the fewest grams that move: out of the sugar and into the dextrose, to a step of half.
    expect([water, sugar, dextrose]).toEqual([800, 134, 66]);
    expect(weighed({onlyWith: {ingredient: "sucrose", min: 100}}, [850.6, 99.4, 50])[1]).toBe(100);
    expect(weighed({onlyWith: {ingredient: "sucrose", min: 100}}, [900.6, 99.4, 0])[1]).toBe(99);
  });

  test("a target that no whole step meets is said to be missed, with what it comes to", () => {
    const {brief, mix} = solved({
      batch: 100,
      ingredients: [
        {name: "a", composition: {water: 50, sucrose: 50}, price: 1, unit: 40},
        {name: "b", composition: {water: 100}, price: 1, unit: 30},
      ],
      targets: {},
    });
    const strict = {
      ...brief,
      targets: [{subject: {kind: "quantity", quantity: "sucrose"}, min: 21, max: 22} as const],
    };
    const result = weighable(strict, grams(mix));
    expect(result.missed).toHaveLength(1);
    const {target, value} = result.missed[0]!;
    expect(target).toBe("sucrose");
    within(value, result.composition.sucrose ?? 0, 1e-12, "what it comes to");
  });

  test("that keep every target are found some grams away, and a miss is told with the digits that show it", () => {
    const {brief, mix} = solved(
      {
        batch: 1000,
        ingredients: [
          {name: "water", price: 0},
          {name: "blackcurrant", price: 6, min: "25 %"},
          {name: "sucrose", price: 1.1},
          {name: "dextrose", price: 1.9},
        ],
        targets: {sugars: {min: 27.9}, sweetness: {max: 28}},
      },
      realPantry,
    );
    expect(weighable(brief, grams(mix)).missed).toEqual([]);
    // To the hundredth 28.0045 would be 28.00, as is asked for.
    const rounded = weighable({...brief, targets: []}, [486, 250, 252, 12]);
    const missed: Missed[] = [{target: "sweetness", bound: "max", limit: 28, value: 28.0045}];
    expect(missedBy({...rounded, missed})).toEqual(["misses: sweetness at most 28, comes to 28.005"]);
    expect(missedBy({...rounded, missed: [{...missed[0]!, value: 28.4}]})).toEqual([
      "misses: sweetness at most 28, comes to 28.40",
    ]);
  });

  test("of random briefs: what is said to be kept is kept, measured anew", () => {
    let kept = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const brief = readBrief(randomBrief(seed), realPantry);
      const mix = solveBrief(brief);
      if (mix.status !== "optimal") continue;
      const {missed, amounts, shares} = weighable(brief, grams(mix));
      if (missed.length === 0) kept++;
      for (const [j, {grams}] of amounts.entries()) {
        expect(grams).toBeGreaterThanOrEqual(0);
        expect(grams).toBeLessThanOrEqual(brief.ingredients[j]!.max + 1e-9);
      }
      for (const {subject, min, max} of brief.targets) {
        if (subject.kind !== "quantity" || missed.some(({target}) => target === subject.quantity)) continue;
        expect(shares[subject.quantity]).toBeGreaterThanOrEqual((min ?? 0) - 0.051);
        expect(shares[subject.quantity]).toBeLessThanOrEqual((max ?? 200) + 0.051);
      }
    }
    expect(kept).toBeGreaterThan(25);
  });
});

describe("practical rules of a brief", () => {
  const milk = {name: "milk", composition: {water: 87.5, milkFat: 3.5, msnf: 9}, price: 1};
  const cream = {name: "cream", composition: {water: 54.6, milkFat: 40, msnf: 5.4}, price: 4};
  const butter = {name: "butter", composition: {water: 16, milkFat: 82, msnf: 2}, price: 6};
  const sugar = {name: "sugar", composition: {sucrose: 100}, price: 1.2};
  const yolk = {
    name: "yolk",
    composition: {water: 52, eggFat: 26.5, otherProtein: 16, otherSolids: 5.5},
    price: 9,
  };
  const base: BriefInput = {
    ingredients: [milk, cream, butter, sugar, yolk],
    targets: {fat: {equal: 10}, sugars: {equal: 16}},
  };
  const amount = (answer: ReturnType<typeof balance>, name: string) => {
    if (answer.status !== "optimal") throw new Error(answer.status);
    return answer.amounts.find(({ingredient}) => ingredient === name)!.grams;
  };
  const with_ = (name: string, more: object): BriefInput => ({
    ...base,
    ingredients: base.ingredients.map((entry) =>
      typeof entry === "object" && entry.name === name ? {...entry, ...more} : entry,
    ),
  });

  test("whole units", () => {
    const answer = balance(with_("yolk", {unit: 18, min: 20}));
    expect(amount(answer, "yolk")).toBeCloseTo(36, 9);
    expect(answer.status === "optimal" && answer.binding.every(({price}) => price === undefined)).toBe(true);
  });

  test("none, or at least so much", () => {
    expect(amount(balance(base), "butter")).toBeLessThan(100);
    const answer = balance(with_("butter", {minIfUsed: 200}));
    expect(amount(answer, "butter")).toBe(0);
  });

  test("at most so many ingredients", () => {
    const answer = balance({...base, maxIngredients: 3});
    if (answer.status !== "optimal") throw new Error(answer.status);
    expect(answer.amounts.filter(({grams}) => grams > 0)).toHaveLength(3);
  });

  test("only with another", () => {
    const answer = balance(with_("butter", {onlyWith: {ingredient: "yolk", min: 50}}));
    expect(amount(answer, "butter") === 0 || amount(answer, "yolk") >= 50 - 1e-9).toBe(true);
    const forced = balance(with_("butter", {onlyWith: {ingredient: "yolk", min: 50}, min: 20}));
    expect(amount(forced, "yolk")).toBeCloseTo(50, 6);
  });

  test("a fixed ratio", () => {
    const answer = balance(with_("yolk", {ratio: {to: "sugar", grams: 0.5}}));
    within(amount(answer, "yolk") / amount(answer, "sugar"), 0.5, 1e-9, "g of yolk per g of sugar");
  });

  /** The rules that hold the cheapest mix of a brief. */
  const holding = (input: BriefInput) => {
    const answer = balance(input);
    if (answer.status !== "optimal") throw new Error(answer.status);
    return answer.binding.filter(({of}) => of === "rule");
  };

  // Amounts that a computer holds exactly and others: the sum that a rule stands for is 0 but for rounding.
  test.each([100, 123.4, 170, 1000 / 3])("that hold a mix are told: %d g if used", (least) => {
    const [rule, ...others] = holding({
      ingredients: [milk, {...cream, minIfUsed: least}, sugar],
      targets: {fat: {min: 3.6}, sugars: {equal: 16}},
    });
    expect(rule).toEqual({
      of: "rule",
      path: "ingredients[1].minIfUsed",
      target: "cream, if used,",
      on: {kind: "rule", rule: "minIfUsed", ingredient: "cream"},
      bound: "min",
      limit: least,
    });
    expect(others).toEqual([]);
  });

  test("that hold a mix are told of every kind", () => {
    const beside = {ingredient: "sugar", min: 200};
    expect(holding({ingredients: [milk, {...cream, min: 20, onlyWith: beside}, sugar]})).toMatchObject([
      {path: "ingredients[1].onlyWith", target: "sugar, for cream,", bound: "min", limit: 200},
    ]);
    const inRatio = {...sugar, ratio: {to: "cream", grams: 0.25}};
    expect(holding({ingredients: [milk, cream, inRatio], targets: {fat: {min: 5}}})).toMatchObject([
      {path: "ingredients[2].ratio", target: "sugar per g of cream", bound: "equal", limit: 0.25},
    ]);
    expect(holding({...base, maxIngredients: 3})).toMatchObject([
      {path: "maxIngredients", target: "number of ingredients", bound: "max", limit: 3},
    ]);
  });

  test("on what is not used hold nothing", () => {
    expect(holding(with_("butter", {minIfUsed: 200}))).toEqual([]);
    const beside = {ingredient: "sugar", min: 160};
    expect(holding(with_("yolk", {onlyWith: beside}))).toEqual([]);
    expect(holding({ingredients: [milk, cream, {...sugar, ratio: {to: "cream", grams: 0.25}}]})).toEqual([]);
  });
});

describe("whole packs", () => {
  const fat = (name: string, price: number, pack: number) => ({
    name,
    composition: {milkFat: 80, water: 20},
    price,
    pack,
  });
  const brief: BriefInput = {
    batch: 1000,
    ingredients: [
      fat("large pack", 5, 1000),
      fat("small pack", 8, 250),
      {name: "water", composition: {water: 100}, price: 0},
    ],
    targets: {fat: {equal: 16}},
  };

  test("change what is cheapest: the price of a pack counts, not of what is used of it", () => {
    const byWeight = balance(brief);
    const byPack = balance({...brief, wholePacks: true});
    if (byWeight.status !== "optimal" || byPack.status !== "optimal") throw new Error("no mix");
    within(byWeight.amounts[0]!.grams, 200, 1e-6, "large pack, g");
    within(byPack.amounts[1]!.grams, 200, 1e-6, "small pack, g");
    expect(byWeight.packs).toEqual([{ingredient: "large pack", packs: 1, left: expect.closeTo(800, 6)}]);
    expect(byPack.packs).toEqual([{ingredient: "small pack", packs: 1, left: expect.closeTo(50, 6)}]);
    within(byWeight.outlay, 5, 1e-9, "one large pack");
    within(byPack.outlay, 2, 1e-9, "one small pack");
  });

  test("are weighed against what is bought by weight, at the price of what is used of it", () => {
    // 200 g of fat: a small pack for 2, or by weight 1.8 or 2.2.
    const dearOrCheap = (price: number) => {
      const {pack: _pack, ...byWeight} = fat("by weight", price, 0);
      const answer = balance({
        ...brief,
        ingredients: [fat("small pack", 8, 250), byWeight, brief.ingredients[2]!],
        wholePacks: true,
      });
      if (answer.status !== "optimal") throw new Error(answer.status);
      return answer.amounts.filter(({grams}) => grams > 1e-6)[0]?.ingredient;
    };
    expect([dearOrCheap(9), dearOrCheap(11)]).toEqual(["by weight", "small pack"]);
  });

  test("are not told where no pack is known", () => {
    const answer = balance({ingredients: [{name: "water", composition: {water: 100}, price: 0}]});
    expect(answer.status).toBe("optimal");
    expect(answer).not.toHaveProperty("packs");
    expect(answer).not.toHaveProperty("outlay");
  });

  test("are in the objective, per kg of mix", () => {
    const answer = balance({...brief, batch: 500, wholePacks: true});
    // 100 g of fat: one small pack of 0.25 kg at 8 is 2 for half a kilogram.
    expect(answer).toMatchObject({
      objective: {name: "cost with whole packs", unit: "money per kg", sense: "minimise"},
    });
    within(answer.status === "optimal" ? answer.objective?.value : NaN, 4, 1e-9, "money per kg");
  });

  test("change nothing where the cost is not minimised, with or without prices", () => {
    // Most costs 200 g of the dearer fat: packs that nothing is taken of are not opened for it.
    const dearest = balance({...brief, wholePacks: true, maximise: "cost"});
    expect(dearest).toMatchObject({status: "optimal", objective: {name: "cost", sense: "maximise"}});
    within(dearest.status === "optimal" ? dearest.cost : NaN, 1.6, 1e-9, "money");
    const most = balance({...brief, targets: {}, maximise: "fat", wholePacks: true});
    within(most.status === "optimal" ? most.shares.fat : NaN, 80, 1e-6, "most fat");
    const {price: _price, ...unpriced} = fat("unpriced", 0, 250);
    expect(
      balance({...brief, ingredients: [unpriced, "water"], wholePacks: true}, {pantry: realPantry}).status,
    ).toBe("optimal");
  });

  test("are counted from amounts: a full pack is one, and what is not used costs nothing", () => {
    const {price: _price, ...unpriced} = fat("unpriced", 0, 250);
    const checked = readBrief(
      {...brief, ingredients: [...brief.ingredients, unpriced], maximise: "fat"},
      demoPantry,
    );
    expect(openedPacks(checked, [0, 250, 750, 0])).toEqual([{ingredient: "small pack", packs: 1, left: 0}]);
    expect(openedPacks(checked, [1001, 0, 0, 0])).toEqual([{ingredient: "large pack", packs: 2, left: 999}]);
    within(outlayOf(checked, [0, 250, 750, 0]), 2, 1e-12, "one small pack");
    within(outlayOf(checked, [0, 251, 749, 0]), 4, 1e-12, "two small packs");
    expect(outlayOf(checked, [0, 0, 900, 100])).toBeUndefined();
  });
});

test("at most so many of a whole shelf ends within its time, with the second engine at hand", async () => {
  const highs = await loadHighs();
  const shelf = demoPantry.ingredients.filter(({price}) => price !== undefined).map(({name}) => name);
  const answer = balance(
    {
      ingredients: shelf,
      targets: {
        fat: {min: 8, max: 10},
        totalSolids: {min: 36, max: 40},
        sugars: {min: 14},
        freezingPoint: {max: -2.4},
      },
      maxIngredients: 4,
    },
    {pantry: demoPantry, search: {highs, now: () => performance.now(), timeLimit: 5000}},
  );
  if (answer.status !== "optimal") throw new Error(answer.status);
  expect(answer.amounts.filter(({percent}) => percent > 1e-6).length).toBeLessThanOrEqual(4);
});

describe("candidates", () => {
  test("differ from each other, keep within the margin, and are each best at what they say", () => {
    const {brief, mix} = solved({
      ...demo,
      near: {"whole milk": 3000, "cream 40 %": 600, sucrose: 700, pear: 700},
    });
    const candidates = candidatesOf(brief, mix);
    const all = [mix, ...candidates];
    expect(candidates.length).toBeGreaterThanOrEqual(3);
    for (const [i, a] of all.entries()) {
      expect(a.cost!).toBeLessThanOrEqual(mix.cost! * 1.15 + 1e-6);
      for (const b of all.slice(0, i)) expect(distance(a, b)).toBeGreaterThan(0.5);
    }
    const named = (name: string) => candidates.find((candidate) => candidate.name === name)!;
    for (const other of all) {
      expect(named("least sweet").shares.sweetness!).toBeLessThanOrEqual(other.shares.sweetness! + 1e-6);
      expect(named("softest at -14 °C").scoop.temperature!).toBeLessThanOrEqual(
        other.scoop.temperature! + 1e-6,
      );
    }
  });
});

describe("a kitchen that is off", () => {
  const spread = {
    parts: {"cream 40 %": {milkFat: 1}, "whole milk": {milkFat: 0.2, lactose: 0.2}},
    weighing: 2,
  };
  const input: BriefInput = {
    ...demo,
    ingredients: demo.ingredients,
    targets: {
      fat: {min: 7, max: 9},
      msnf: {min: 6.5, max: 10},
      sugars: {min: 14, max: 20},
      freezingPoint: {max: -2.4},
      eggYolkSolids: {min: 1.4},
    },
  };

  test("breaks the targets of the cheapest mix about half the time, those of a mix with margin never", () => {
    const plain = solved(input);
    const robust = solved({...input, spread, margin: true});
    const {spread: off} = robust.brief;
    const before = reliability(plain.brief, grams(plain.mix), off!, {batches: 2000});
    const after = reliability(robust.brief, grams(robust.mix), off!, {batches: 2000});
    within(
      before.targets.find(({target}) => target === "fat")!.holds,
      0.5,
      0.06,
      "chance that fat of at least 7 holds on its limit",
    );
    // Of any events: all together are no likelier than each, and no less than what the others leave (Bonferroni).
    const each = before.targets.map(({holds}) => holds);
    expect(before.all).toBeLessThanOrEqual(Math.min(...each));
    expect(before.all).toBeGreaterThanOrEqual(1 - each.reduce((missed, holds) => missed + 1 - holds, 0));
    expect(before.all).toBeLessThan(0.6);
    // Standard error of a share of n draws, largest at one half: sqrt(0.5 x 0.5 / n).
    expect(before.error).toBeCloseTo(Math.sqrt(0.25 / 2000), 12);
    expect(after.all).toBe(1);
    expect(robust.mix.cost!).toBeGreaterThan(plain.mix.cost!);
  });

  test("gives the same chances for the same seed, others for another", () => {
    const {brief, mix} = solved({...input, spread, margin: true});
    const run = (seed: number) =>
      reliability(
        {...brief, targets: [{subject: {kind: "quantity", quantity: "fat"}, min: 7.1}]},
        grams(mix),
        brief.spread!,
        {seed, batches: 500},
      );
    expect(run(7)).toEqual(run(7));
    expect(run(7).targets[0]!.low).not.toBe(run(8).targets[0]!.low);
  });

  test("costs nothing more where no margin is asked for", () => {
    within(solved({...input, spread}).mix.cost, solved(input).mix.cost!, 1e-9, "cost");
  });

  test("nothing at all on the scale is no batch", () => {
    const sweet = {ingredients: ["sucrose"], targets: {sugars: {min: 100}}, batch: 2};
    const brief = readBrief(sweet, realPantry);
    // Sugar alone is all sugar, however wrong the scale is.
    const {all, targets} = reliability(brief, [2], {weighing: 5}, {batches: 200});
    expect(all).toBe(1);
    within(targets[0]!.low, 100, 1e-9, "g per 100 g");
    within(targets[0]!.high, 100, 1e-9, "g per 100 g");
  });

  test("without a spread changes nothing", () => {
    const {brief, mix} = solved(input);
    const still = reliability(brief, grams(mix), {parts: new Map(), weighing: 0}, {batches: 3});
    expect(still.all).toBe(1);
  });
});
