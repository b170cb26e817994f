import {describe, expect, test} from "vitest";
import {OPTIONS, OPTIONS_OF, usage} from "../../lib/command/usage.ts";

const named = (text: string) => new Set([...text.matchAll(/--([a-z]+)/g)].map(([, option]) => option!));
const ANYWHERE = Object.keys(OPTIONS).filter(
  (option) => !Object.values(OPTIONS_OF).some((own) => Object.hasOwn(own, option)),
);

describe.each(Object.entries(OPTIONS_OF))("--help of %s", (name, own) => {
  test("has its own options and those of all commands, and none of another's", () => {
    const options = [...ANYWHERE.filter((option) => option !== "help"), ...Object.keys(own)];
    expect([...named(usage(name))].sort()).toEqual(options.sort());
  });

  test("fits a terminal of 110 columns", () => {
    expect(
      usage(name)
        .split("\n")
        .filter((line) => line.length > 110),
    ).toEqual([]);
  });
});

test("--help alone has every option", () => {
  expect([...named(usage())].sort()).toEqual(Object.keys(OPTIONS).sort());
});
