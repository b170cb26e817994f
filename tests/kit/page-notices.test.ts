import {parseHTML} from "linkedom";
import {expect, test} from "vitest";
import {fold, packageOf} from "../../notebooks/kit/site/notices.ts";

const {document} = parseHTML(`<main>${fold(["d3-dsv", "@fontsource-variable/inter"])}</main>`);
const summaries = [...document.querySelectorAll("details details summary")].map((node) => node.textContent);

test("the fold attributes the data as their licences ask (Open Government Licence v3.0; Etalab Open Licence)", () => {
  const text = document.querySelector("ul")!.textContent;
  expect(text).toContain(
    "Contains public sector information licensed under the Open Government Licence v3.0",
  );
  expect(text).toContain("Anses. 2020. Ciqual French food composition table");
});

test("the fold has each package's own licence text, after the project's", () => {
  expect(summaries[0]).toBe("mixwright, MIT");
  expect(summaries[1]).toMatch(/^d3-dsv \d+\.\d+\.\d+, ISC$/);
  expect(summaries[2]).toMatch(/^@fontsource-variable\/inter .*OFL-1\.1$/);
  const texts = [...document.querySelectorAll("pre")].map((node) => node.textContent);
  expect(texts[0]).toContain("Permission is hereby granted, free of charge");
  expect(texts[1]).toContain("Mike Bostock");
  expect(texts[2]).toContain("SIL Open Font License");
});

test("a module is known by its package, scoped or nested", () => {
  expect(packageOf("/a/node_modules/@observablehq/plot/src/index.js")).toBe("@observablehq/plot");
  expect(packageOf("/a/node_modules/d3/node_modules/d3-dsv/src/dsv.js")).toBe("d3-dsv");
  expect(packageOf("/a/lib/index.ts")).toBeUndefined();
});
