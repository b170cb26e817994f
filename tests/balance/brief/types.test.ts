import {expect, expectTypeOf, test} from "vitest";
import {
  type AimInput,
  balance,
  type BriefInput,
  type Quantity,
  type TargetsInput,
} from "../../../lib/index.ts";

// Every case below is held by the compiler: it fails where an error that is expected does not come.
const ingredients = [{name: "sugar", composition: {sucrose: 100}, properties: {co2: 90}}];

test("what is written wrongly in a brief does not compile", () => {
  const wrong: BriefInput[] = [
    // @ts-expect-error a part is a number
    {ingredients: [{name: "x", composition: {water: "lots"}}]},
    // @ts-expect-error no part is called so
    {ingredients: [{name: "x", composition: {watr: 100}}]},
    // @ts-expect-error no quantity is called so
    {ingredients, targets: {totalSolid: {min: 30}}},
    // @ts-expect-error a limit is called min, max or equal
    {ingredients, targets: {totalSolids: {least: 30}}},
    // @ts-expect-error nothing that can be minimised is called so
    {ingredients, minimise: "costt"},
    // @ts-expect-error a brief has no such key
    {ingredients, tragets: {}},
    // @ts-expect-error ice is asked for at a temperature
    {ingredients, targets: {ice: {max: 5}}},
  ];
  expect(wrong).toHaveLength(7);
  // @ts-expect-error a name of one's own is declared, not guessed from what is written
  expect(() => balance({ingredients, targets: {co3: {max: 5}}})).toThrow(/unknown quantity/);
});

test("every quantity is a target and an aim, and properties of one's own are where they are declared", () => {
  expectTypeOf<Record<Quantity | "cost", {max: number}>>().toExtend<TargetsInput>();
  expectTypeOf<Quantity | "cost">().toExtend<AimInput>();
  expectTypeOf<"co2">().not.toExtend<AimInput>();
  expectTypeOf<"co2">().toExtend<AimInput<"co2">>();
  const own: BriefInput<"co2"> = {ingredients, targets: {co2: {max: 100}}, minimise: "co2"};
  expect(balance(own).status).toBe("optimal");
  expect(balance<"co2">({ingredients, targets: {co2: {max: 100}}}).status).toBe("optimal");
  expect(balance<string>(JSON.parse(JSON.stringify(own)) as BriefInput<string>).status).toBe("optimal");
});
