import {describe, expect, test} from "vitest";
import {balance} from "../../../lib/balance/balance.ts";
import type {ConflictingLimit, Relaxation} from "../../../lib/balance/mix/answer.ts";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import type {Brief, Choice, Target} from "../../../lib/balance/brief/brief.ts";
import {explainConflict} from "../../../lib/balance/explain/conflict.ts";
import {moved, without} from "../../../lib/balance/explain/moved.ts";
import {targetPath} from "../../../lib/balance/brief/limit-path.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {solveBrief} from "../../../lib/balance/mix/solve-brief.ts";
import {DOSES} from "../../../lib/pantry/doses.ts";
import {withRelaxations} from "../../../lib/balance/explain/with-relaxations.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {findIngredient, pantryOf} from "../../../lib/pantry/pantry.ts";
import {realPantry} from "../../support/pantry.ts";
import {randomBrief} from "../../support/random-brief.ts";
import {seededRandom} from "../../../lib/core/random.ts";
import {textReport} from "../../../lib/io/report/report.ts";
import {within} from "../../support/within.ts";

const nothing = pantryOf([]);

/** Why a brief cannot be met, with the whole shelf to add from. */
function explained(brief: BriefInput) {
  const answer = balance(brief, {pantry: realPantry});
  if (answer.status !== "infeasible") throw new Error(answer.status);
  return answer;
}

/** A brief with only those of its limits that a list names. */
function onlyThese(brief: Brief, limits: readonly ConflictingLimit[]): Brief {
  const has = (path: string, side: "min" | "max") =>
    limits.some((limit) => limit.path === path && (limit.bound === side || limit.bound === "equal"));
  return {
    ...brief,
    doses: (brief.doses ?? []).filter(({index}) => has(`doses.${DOSES[index]!.key}`, "max")),
    targets: brief.targets.flatMap((target): Target[] => {
      const {subject, min, max} = target;
      const path = targetPath(brief, target);
      const kept = {
        ...(min !== undefined && has(path, "min") && {min}),
        ...(max !== undefined && has(path, "max") && {max}),
      };
      return Object.keys(kept).length ? [{subject, ...kept}] : [];
    }),
    ingredients: brief.ingredients.map((choice, j): Choice => ({
      ...choice,
      min: has(`ingredients[${j}]`, "min") ? choice.min : 0,
      max: has(`ingredients[${j}]`, "max") ? choice.max : Infinity,
    })),
  };
}

describe("random impossible briefs", () => {
  const impossible = Array.from({length: 400}, (_, seed) => randomBrief(seed + 1000)).filter(
    (brief) => solveBrief(readBrief(brief, realPantry)).status === "infeasible",
  );

  test("there are enough of them to mean something", () => {
    expect(impossible.length).toBeGreaterThan(40);
  });

  test("the limits named conflict by themselves, and no longer without any one of them", () => {
    for (const written of impossible) {
      const brief = readBrief(written, realPantry);
      const {targets} = explainConflict(brief, nothing);
      expect(targets.length).toBeGreaterThan(0);
      expect(solveBrief(onlyThese(brief, targets)).status).toBe("infeasible");
      for (const left of targets) {
        const rest = targets.filter((limit) => limit !== left);
        expect(solveBrief(onlyThese(brief, rest)).status, `${brief.name} without ${left.target}`).toBe(
          "optimal",
        );
      }
    }
  });

  test("the change proposed, applied as it is listed, is enough: the answer is the mix that was shown", () => {
    for (const written of impossible) {
      const {relaxation, relaxations, amounts} = explainConflict(readBrief(written, realPantry), nothing);
      expect(relaxation).toBe("found");
      const mended = solveBrief(readBrief(withRelaxations(written, relaxations), realPantry));
      if (mended.status !== "optimal") throw new Error(mended.status);
      for (const [j, {grams}] of mended.amounts.entries())
        within(grams, amounts?.[j]?.grams ?? NaN, 1e-6 * written.batch!, "the mix shown");
      for (const {to} of relaxations) expect(to).toBe(Number(to.toFixed(2)));
    }
  });
});

test("a limit that nothing bears on does not drown the others: 50 to 40 % sugar is less, by proportion, than 40 to 50 % solids", () => {
  const targets = {msnf: {equal: 0}, totalSolids: {max: 40}, sugars: {min: 50}};
  const answer = balance({ingredients: ["sucrose", "water"], targets}, {pantry: realPantry});
  if (answer.status !== "infeasible") throw new Error(answer.status);
  expect(answer.conflict.relaxations).toEqual([
    {
      of: "target",
      path: "targets.sugars",
      target: "sugars",
      on: {kind: "measure", key: "sugars", subject: {kind: "quantity", quantity: "sugars"}},
      bound: "min",
      from: 50,
      to: expect.closeTo(40, 6),
    },
  ]);
});

const milk = {name: "milk", composition: {water: 87.5, milkFat: 3.5, msnf: 9}, price: 1};
const cream = {name: "cream", composition: {water: 54.6, milkFat: 40, msnf: 5.4}, price: 4};
const sugar = {name: "sugar", composition: {sucrose: 100}, price: 1.2};

describe("impossible briefs a cook would write", () => {
  test("a least amount is in the way only where it is: no amount can be negative", () => {
    const named = (fat: number) => {
      const fatty = {...cream, composition: {water: 60, milkFat: 40}};
      const water = {name: "water", composition: {water: 100}, price: 0, min: 500};
      const brief = readBrief(
        {batch: 1000, ingredients: [fatty, water], targets: {fat: {min: fat}}},
        nothing,
      );
      return explainConflict(brief, nothing)
        .targets.map(({path, bound}) => `${path} ${bound}`)
        .sort();
    };
    // At most 500 g of cream at 40 % are 20 % of fat; without water they would be 40 %.
    expect(named(30)).toEqual(["ingredients[1] min", "targets.fat min"]);
    expect(named(50)).toEqual(["targets.fat min"]);
  });

  test("more fat than the cream has: how far it reaches, and what would help", () => {
    const answer = balance(
      {ingredients: [milk, cream, sugar], targets: {fat: {min: 45}}},
      {pantry: realPantry},
    );
    if (answer.status !== "infeasible") throw new Error(answer.status);
    expect(answer.candidates).toEqual([]);
    expect(answer.conflict.targets).toEqual([
      {
        of: "target",
        path: "targets.fat",
        target: "fat",
        on: {kind: "measure", key: "fat", subject: {kind: "quantity", quantity: "fat"}},
        bound: "min",
        limit: 45,
      },
    ]);
    within(answer.conflict.reach?.best, 40, 1e-6, "most fat");
    expect(answer.conflict.relaxations).toHaveLength(1);
    within(answer.conflict.relaxations[0]!.to, 40, 1e-6, "fat that can be had");
    expect(answer.conflict.openers).not.toHaveLength(0);
  });

  test("nothing is named that would have to be overdosed", () => {
    // Soft without sugars: half a kilogram of salt or citric acid would do it.
    const brief = {
      batch: 3000,
      ingredients: [milk, cream, sugar],
      targets: {sugars: {max: 12}, fat: {min: 8, max: 12}, scoopTemperature: {max: -20}},
    };
    const {conflict} = explained(brief);
    expect(conflict.openers).not.toContain("salt");
    expect(conflict.openers).not.toContain("citric acid");
    expect(explained({...brief, doses: "none"}).conflict.openers).not.toContain("salt");
    // Without the dose, salt alone makes the brief possible; with it, the conflict names the dose.
    const salted = {...brief, ingredients: [...brief.ingredients, {name: "salt", price: 1}]};
    expect(balance({...salted, doses: "none"}, {pantry: realPantry}).status).toBe("optimal");
    expect(explained(salted).conflict.targets).toContainEqual({
      of: "dose",
      path: "doses.salt",
      target: "salt",
      on: {kind: "dose", dose: "salt"},
      bound: "max",
      limit: 0.2,
    });
  });

  test("stock limits what a larger max allows, and is named as the reason", () => {
    const brief = {
      batch: 1000,
      ingredients: [{...milk, max: 2000}, {...cream, stock: 100, max: 900}, sugar],
      targets: {fat: {min: 10}},
    };
    const {conflict} = explained(brief);
    expect(conflict.targets).toContainEqual({
      of: "ingredient",
      path: "ingredients[1]",
      target: "cream",
      on: {kind: "ingredient", ingredient: "cream", index: 1},
      bound: "max",
      limit: 100,
      inStock: true,
    });
    // 100 g of cream and 900 of milk: 40 + 31.5 g of fat.
    within(conflict.relaxations[0]?.to, 7.15, 1e-6, "fat that can be had");
    const enough = balance({...brief, targets: {fat: {min: 7.15}}});
    if (enough.status !== "optimal") throw new Error(enough.status);
    expect(enough.binding).toContainEqual(
      expect.objectContaining({target: "cream", limit: 100, inStock: true}),
    );
  });

  test("stock that does not fill the batch", () => {
    const answer = balance({
      batch: 1000,
      ingredients: [
        {...milk, max: 300},
        {...sugar, max: 100},
      ],
    });
    if (answer.status !== "infeasible") throw new Error(answer.status);
    expect(answer.conflict.targets.map(({target}) => target)).toEqual(["milk", "sugar"]);
    within(
      answer.conflict.relaxations.reduce((total, {from, to}) => total + to - from, 0),
      600,
      1e-6,
      "g missing",
    );
  });

  test("two wishes for the same solids", () => {
    const answer = balance({
      ingredients: [milk, cream, sugar],
      targets: {sugars: {min: 30}, totalSolids: {max: 25}},
    });
    if (answer.status !== "infeasible") throw new Error(answer.status);
    expect(new Set(answer.conflict.targets.map(({target}) => target))).toEqual(
      new Set(["sugars", "totalSolids"]),
    );
  });
});

describe("what is in the way, and what is not", () => {
  const conflictOf = (brief: BriefInput) => {
    const answer = balance(brief);
    if (answer.status !== "infeasible") throw new Error(answer.status);
    return answer.conflict;
  };
  const amounts = (brief: BriefInput) => conflictOf(brief).targets.filter(({of}) => of === "ingredient");
  const named = {
    of: "ingredient",
    path: "ingredients[0]",
    target: "milk",
    on: {kind: "ingredient", ingredient: "milk", index: 0},
  };

  test("an amount of one value, and one that is not for want of stock", () => {
    const targets = {fat: {min: 20}};
    expect(amounts({ingredients: [{...milk, min: 900, max: 900}, cream], targets})).toEqual([
      {...named, bound: "equal", limit: 900},
    ]);
    expect(amounts({ingredients: [{...milk, max: 300}, sugar], targets: {sucrose: {max: 50}}})).toEqual([
      {...named, bound: "max", limit: 300},
    ]);
  });

  test("an amount in steps as the cook limits it, and none that the cook did not limit", () => {
    const targets = {sucrose: {max: 50}};
    expect(amounts({ingredients: [{...milk, step: 50, max: 320}, sugar], targets})).toEqual([
      {...named, bound: "max", limit: 320},
    ]);
    expect(amounts({ingredients: [{...milk, step: 50}], targets: {fat: {min: 20}}})).toEqual([]);
  });

  test("how far a target reaches is told of one that alone is in the way: at most, or at least", () => {
    const two = {ingredients: [milk, cream], targets: {fat: {min: 45}, sucrose: {max: 50}}};
    expect(conflictOf(two).reach).toEqual({target: "fat", best: expect.closeTo(40, 6)});
    expect(conflictOf({...two, targets: {fat: {max: 2}}}).reach).toEqual({
      target: "fat",
      best: expect.closeTo(3.5, 6),
    });
    expect(conflictOf({...two, targets: {fat: {equal: 45}}}).reach).toBeUndefined();
  });

  test("another conflict waits behind, though one of the limits named is in both", () => {
    const targets = {sucrose: {min: 30}, totalSolids: {max: 25}};
    const water = {name: "water", composition: {water: 100}, price: 0};
    const brief = {ingredients: [water, sugar], targets};
    expect(conflictOf(brief).more).toBeUndefined();
    expect(conflictOf({...brief, targets: {...targets, sweetness: {max: 20}}}).more).toBe(true);
  });
});

describe("doses that rise with what is asked for outright", () => {
  const conflictIn = (brief: BriefInput) => explainConflict(readBrief(brief, realPantry), nothing);

  test("a wish that cannot be met holds no other to a customary dose", () => {
    const ingredients = ["whole milk", "sucrose", "erythritol"];
    const {targets, more, relaxations, amounts} = conflictIn({
      ingredients,
      targets: {polyols: {min: 8}, fibre: {min: 2}},
    });
    expect(targets.map(({path}) => path)).toEqual(["targets.fibre"]);
    expect(more).toBeUndefined();
    expect(relaxations.map(({path, to}) => [path, to])).toEqual([["targets.fibre", 0]]);
    // 8 % polyols are asked for outright: 80 g of erythritol in 1000 g.
    within(amounts?.find(({ingredient}) => ingredient === "erythritol")?.grams ?? 0, 80, 1e-3, "g");
    // Two wishes that do not fit into 100 g together each hold by themselves.
    const both = conflictIn({
      ingredients: ["water", "erythritol", "inulin"],
      targets: {polyols: {min: 60}, fibre: {min: 60}},
    });
    expect(both.targets.map(({path}) => path)).toEqual(["targets.polyols", "targets.fibre"]);
    expect(both.more).toBeUndefined();
  });

  test("a dose that is customary again without the least amount that raised it is named as what waits behind", () => {
    const brief: BriefInput = {
      ingredients: [
        {name: "whole milk", min: 985},
        {name: "salt", min: 30},
      ],
      targets: {freezingPoint: {max: -1.2}},
    };
    const {targets, more, behind} = conflictIn(brief);
    expect(targets.map(({path, bound}) => `${path} ${bound}`)).toEqual([
      "ingredients[0] min",
      "ingredients[1] min",
    ]);
    expect(more).toBe(true);
    expect(behind?.without.path).toBe("ingredients[1]");
    expect(behind?.targets.map(({path}) => path)).toEqual(["targets.freezingPoint", "doses.salt"]);
    expect(textReport(balance(brief, {pantry: realPantry}))).toContain(
      "Without “salt at least 30 g”, these still cannot hold:\n  freezing point at most −1.2\n  customary: salt at most 0.2 %",
    );
  });

  const DOSED = ["salt", "erythritol", "inulin", "guar gum", "citric acid", "sorbitol", "egg yolk"];
  /** Invented briefs of what is taken by the pinch, with wishes and least amounts beyond custom, most of them impossible. */
  const asking = Array.from({length: 150}, (_, seed): BriefInput => {
    const next = seededRandom(seed + 1);
    const some = DOSED.filter(() => next() < 0.5);
    const least = () => Math.round(60 * next());
    const targets: Record<string, object> = {};
    for (const quantity of ["polyols", "fibre", "sugars", "fat", "totalSolids"])
      if (next() < 0.5) targets[quantity] = {[next() < 0.7 ? "min" : "max"]: Math.round(20 * next()) / 2};
    if (next() < 0.3) targets.freezingPoint = {max: -Math.round(10 * (1 + 3 * next())) / 10};
    return {
      batch: 1000,
      ingredients: [
        {name: "whole milk", ...(next() < 0.3 && {min: 800 + least()})},
        "sucrose",
        ...some.map((name) => ({name, ...(next() < 0.3 && {min: least()})})),
      ],
      targets,
    };
  })
    .map((written) => ({written, brief: readBrief(written, realPantry)}))
    .filter(({brief}) => solveBrief(brief).status === "infeasible");

  test("a conflict solves without any one of its limits, or says that it does not", () => {
    expect(asking.length).toBeGreaterThan(40);
    let waiting = 0;
    for (const {brief} of asking) {
      const {targets, more, behind} = explainConflict(brief, nothing);
      const left = targets.filter((limit) => solveBrief(without(brief, limit)).status === "infeasible");
      expect(more ?? false, JSON.stringify(targets)).toBe(left.length > 0);
      expect((behind?.targets.length ?? 0) > 0).toBe(left.length > 0);
      if (more) waiting++;
    }
    expect(waiting).toBeGreaterThan(5);
  });

  test("no change of one limit alone is less, by proportion, than the change proposed", () => {
    for (const {brief} of asking) {
      const {relaxations, relaxation} = explainConflict(brief, nothing);
      expect(relaxation).toBe("found");
      if (relaxations.some(({of}) => of !== "target")) continue;
      const proportion = ({path, from, to}: Pick<Relaxation, "path" | "from" | "to">) =>
        path === "targets.freezingPoint" ? 0 : Math.abs(to - from) / Math.max(Math.abs(from), 1e-6);
      const proposed = relaxations.reduce((total, move) => total + proportion(move), 0);
      for (const target of brief.targets) {
        const {min, max, subject} = target;
        if (subject.kind !== "quantity") continue;
        const side = min === undefined ? "max" : "min";
        const from = (min ?? max)!;
        const one = (to: number) =>
          solveBrief(
            moved(brief, [
              {
                of: "target",
                path: targetPath(brief, target),
                target: subject.quantity,
                on: {kind: "measure", key: subject.quantity, subject},
                bound: side,
                from,
                to,
              },
            ]),
          ).status === "optimal";
        // Nine tenths of what is proposed: rounding to the hundredth is less.
        const by = 0.9 * proposed * from - 0.02;
        expect(by > 0 && one(side === "min" ? Math.max(0, from - by) : from + by)).toBe(false);
      }
    }
  });
});

describe("what could be added", () => {
  const water = {name: "water", composition: {water: 100}, price: 0};
  const fat = (name: string, percent: number, more: object = {}) => ({
    name,
    composition: {otherFat: percent, water: 100 - percent},
    ...more,
  });
  const openers = (brief: BriefInput, shelf: Ingredient[]) => {
    const answer = balance(brief, {openersFrom: pantryOf(shelf)});
    return answer.status === "infeasible" ? answer.conflict.openers : undefined;
  };
  const brief = {batch: 1000, ingredients: [water], targets: {fat: {min: 5}}};

  test("is five at most, the one that needs least of itself first, and nothing that does not help", () => {
    const shelf = [30, 4, 60, 20, 90, 10, 50].map((percent) => fat(`fat ${percent}`, percent));
    expect(openers(brief, shelf)).toEqual(["fat 90", "fat 60", "fat 50", "fat 30", "fat 20"]);
  });

  test("is enough in stock, and known in all that the brief limits", () => {
    // 50 g of fat are 62.5 g of an 80 % one.
    const shelf = [fat("little", 80, {stock: 62}), fat("much", 80, {stock: 63})];
    expect(openers(brief, shelf)).toEqual(["much"]);
    const counted = {
      ...brief,
      ingredients: [{...water, properties: {co2: 0}}],
      targets: {fat: {min: 5}, co2: {max: 50}},
    } as BriefInput;
    const known = fat("known", 80, {properties: {co2: 300}});
    const heavy = fat("heavy", 80, {properties: {co2: 900}});
    expect(openers(counted, [fat("unknown", 80), known, heavy])).toEqual(["known"]);
  });

  test("is first what nearly every kitchen has, then what is of a kind with what is there; alcohol never unasked", () => {
    const {openers: forFat} = explained({
      ingredients: ["water", "sucrose", "coconut milk"],
      targets: {fat: {min: 30, max: 32}, sugars: {min: 15}, protein: {max: 3}},
    }).conflict;
    expect(forFat[0]).toBe("cream 36 %");
    const groups = forFat.map((name) => findIngredient(realPantry, name).group);
    expect(groups.slice(1)).toContain("coconut");
    const soft = (...ingredients: string[]) =>
      explained({ingredients, targets: {freezingPoint: {max: -3.5}, sugars: {max: 10}}}).conflict.openers;
    const spirits = (openers: readonly string[]) =>
      openers.filter((name) => (findIngredient(realPantry, name).composition.alcohol ?? 0) > 1);
    expect(spirits(soft("whole milk", "sucrose"))).toEqual([]);
    expect(spirits(soft("whole milk", "sucrose", "beer")).length).toBeGreaterThan(0);
  });

  test("is not there already, though more of it would help", () => {
    const short = {...brief, ingredients: [{...water, max: 300}, fat("lard", 100, {price: 1, max: 100})]};
    expect(openers(short, [fat("lard", 100), fat("tallow", 100)])).toEqual(["tallow"]);
  });
});

describe("a change in the cook's own sense", () => {
  const limits = (brief: BriefInput) =>
    explained(brief).conflict.relaxations.map(({path, bound, to}) => [path, bound, to]);

  test("no amount moves where a target can give", () => {
    const brief = {
      batch: 5000,
      ingredients: [{...milk, max: 500}, cream, sugar],
      targets: {fat: {max: 10}, sugars: {max: 20}},
    };
    expect(limits(brief).every(([path]) => String(path).startsWith("targets."))).toBe(true);
  });

  test("where amounts alone conflict, none grows more than it must: five kilograms of at most 1.8", () => {
    const brief = {
      batch: 5000,
      ingredients: [
        {...milk, max: 500},
        {...cream, max: 800},
        {...sugar, max: "10 %"},
      ],
    };
    // Each may become three times what it was: 1500 + 2400 leave 1100 g of sugar, 22 %.
    expect(limits(brief)).toEqual([
      ["ingredients[0]", "max", 1500],
      ["ingredients[1]", "max", 2400],
      ["ingredients[2]", "max", 1100],
    ]);
    const {relaxations} = explained(brief).conflict;
    expect(withRelaxations(brief, relaxations).ingredients[2]).toMatchObject({max: "22 %"});
    expect(balance(withRelaxations(brief, relaxations)).status).toBe("optimal");
  });

  test("amounts in steps grow by whole steps, those in grams are told in grams, and stock is touched last", () => {
    // Each may become three times what it was, and milk costs less of its size than sugar: 900 g of it.
    const moves = (more: object) => {
      const brief = {
        ingredients: [
          {...milk, ...more},
          {...sugar, max: 100},
        ],
      };
      const {relaxations} = explained(brief).conflict;
      expect(balance(withRelaxations(brief, relaxations)).status).toBe("optimal");
      return relaxations;
    };
    const move = {path: "ingredients[0]", bound: "max", from: 300, to: 900};
    for (const more of [{max: 300}, {max: 300, stock: 900}]) {
      const [milkMove, ...none] = moves(more);
      expect(milkMove).toMatchObject(move);
      expect(milkMove).not.toHaveProperty("toPercent");
      expect(milkMove).not.toHaveProperty("inStock");
      expect(none).toEqual([]);
    }
    expect(moves({max: 300, stock: 800})[0]).toMatchObject({...move, inStock: true});
    expect(moves({max: 320, step: 50})).toEqual([expect.objectContaining({...move, from: 320})]);
  });

  test("of one place leaves the others as they are", () => {
    const brief: BriefInput = {
      ingredients: [{...milk, stock: 300}],
      targets: {
        ice: [
          {at: -18, max: 60},
          {at: -10, max: 50},
        ],
      },
      doses: {salt: 1, xylitol: 3},
    };
    const move = {of: "target", target: "", bound: "max", from: 0} as unknown as Relaxation;
    const changed = withRelaxations(brief, [
      {...move, path: "targets.ice[1]", to: 55},
      {...move, path: "ingredients[0]", to: 400, inStock: true},
      {...move, path: "doses.salt", to: 2},
    ]);
    expect(changed).toEqual({
      ingredients: [{...milk, stock: 400}],
      targets: {
        ice: [
          {at: -18, max: 60},
          {at: -10, max: 55},
        ],
      },
      doses: {salt: 2, xylitol: 3},
    });
    const salted: Relaxation = {...move, path: "doses.salt", to: 2};
    expect(withRelaxations({...brief, doses: "customary"}, [salted]).doses).toEqual({salt: 2});
    expect(changed.ingredients[0]).not.toHaveProperty("max");
  });

  test("one exact value becomes a range on the side that gives, in its place among the others", () => {
    const targets = {fat: {equal: 30}, ice: [{at: -18, min: 1}], sugars: {max: 5}};
    const brief = {ingredients: [{...milk, min: "40 %"}, cream, sugar], targets};
    const {relaxations} = explained(brief).conflict;
    const mended = withRelaxations(brief, relaxations);
    expect(Object.keys(mended.targets!)).toEqual(["fat", "ice", "sugars"]);
    // 40 % of milk with 3.5 % fat and 60 % of cream with 40 %: 25.4 %.
    expect(mended.targets!.fat).toEqual({min: 25.4, max: 30});
    expect(balance(mended).status).toBe("optimal");
  });

  test("a stock that is too small is to be enlarged", () => {
    const brief = {
      ingredients: [
        {...milk, stock: 300, max: "90 %"},
        {...sugar, max: 100},
      ],
    };
    const {relaxations} = explained(brief).conflict;
    expect(relaxations).toContainEqual(expect.objectContaining({path: "ingredients[0]", inStock: true}));
    expect(balance(withRelaxations(brief, relaxations)).status).toBe("optimal");
  });

  test("a temperature that no figure helps is left out, and none is asked for that a brief refuses", () => {
    const brief = {ingredients: [{name: "water"}], targets: {freezingPoint: {max: -1}}};
    const {relaxations} = explained(brief).conflict;
    expect(relaxations).toEqual([expect.objectContaining({path: "targets.freezingPoint", dropped: true})]);
    expect(balance(withRelaxations(brief, relaxations), {pantry: realPantry}).status).toBe("optimal");
  });

  test("a temperature that the mix has not is left out: fat freezes at none, 5 % of water in sugar hardens at none", () => {
    const oil = {name: "oil", composition: {otherFat: 100}, price: 1};
    const syrup = {name: "syrup", composition: {dextrose: 95, water: 5}, price: 1};
    const left = (brief: BriefInput) => {
      const {relaxations} = explained(brief).conflict;
      expect(balance(withRelaxations(brief, relaxations)).status).toBe("optimal");
      return relaxations.filter(({of}) => of === "target");
    };
    expect(left({ingredients: [oil], targets: {freezingPoint: {max: -2}}})).toEqual([
      expect.objectContaining({path: "targets.freezingPoint", bound: "max", from: -2, dropped: true}),
    ]);
    expect(left({ingredients: [syrup], targets: {scoopTemperature: {min: -12}}})).toEqual([
      expect.objectContaining({path: "targets.scoopTemperature", bound: "min", from: -12, dropped: true}),
    ]);
  });

  test("what waits behind is said, and where nothing that may give helps", () => {
    const both = {
      ingredients: [milk, cream],
      targets: {fat: {min: 45}, sugars: {min: 5}},
    };
    expect(explained(both).conflict.more).toBe(true);
    expect(explained({...both, targets: {fat: {min: 45}}}).conflict.more).toBeUndefined();
    const bound = {
      ingredients: [
        {...milk, ratio: {to: "cream", grams: 1}},
        {...cream, ratio: {to: "sugar", grams: 1}},
        {...sugar, ratio: {to: "milk", grams: 2}},
      ],
    };
    expect(explained(bound).conflict).toMatchObject({relaxation: "impossible", relaxations: []});
    // What comes in whole steps limits amounts by itself: nothing is proved then.
    const inSteps = {ingredients: [...bound.ingredients.slice(0, 2), {...bound.ingredients[2]!, step: 1}]};
    expect(explained(inSteps).conflict).toMatchObject({relaxation: "not searched to the end"});
  });

  test("a checked brief is moved as the written one is: per cent, stock, a temperature that goes, a dose", () => {
    const brief = {
      ingredients: [
        {...milk, min: "40 %", max: "90 %"},
        {...cream, stock: 100, max: "30 %"},
        {...sugar, max: 200},
        {name: "salt", price: 1, composition: {salt: 100}},
      ],
      targets: {fat: {min: 9, max: 20}, sucrose: {max: 12}, freezingPoint: {max: -30}},
      doses: {salt: 1},
    };
    const side = {of: "target" as const, target: "", from: 0} as unknown as Relaxation;
    const relaxations: Relaxation[] = [
      {...side, path: "ingredients[0]", bound: "min", to: 300, toPercent: 30},
      {...side, path: "ingredients[1]", bound: "max", to: 150, inStock: true},
      {...side, path: "ingredients[2]", bound: "max", to: 250},
      {...side, path: "targets.fat", bound: "min", to: 7},
      {...side, path: "targets.freezingPoint", bound: "max", to: -40, dropped: true},
      {...side, path: "doses.salt", bound: "max", to: 2},
    ];
    const written = readBrief(withRelaxations(brief, relaxations), nothing);
    expect(moved(readBrief(brief, nothing), relaxations)).toEqual(written);
    expect(written.ingredients.map(({min, max}) => [min, max])).toEqual([
      [300, 900],
      [0, 150],
      [0, 250],
      [0, Infinity],
    ]);
  });

  test("a change of another brief is refused", () => {
    const {relaxations} = explained({ingredients: [milk], targets: {fat: {min: 45}}}).conflict;
    expect(() => withRelaxations({ingredients: [milk]}, relaxations)).toThrow(
      /relaxations: a place that the brief does not have \(got "targets\.fat"\)/,
    );
  });
});
