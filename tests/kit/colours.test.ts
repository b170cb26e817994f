import {readFileSync} from "node:fs";
import {describe, expect, test} from "vitest";
import {PALETTE} from "../../lib/io/text/palette.ts";

type Rgb = readonly [number, number, number];
const SCHEMES = ["light", "dark"] as const;
type Scheme = (typeof SCHEMES)[number];

const css = readFileSync("notebooks/kit/styles/colours.css", "utf8");

/** A colour of the page by name, in either scheme, as 8-bit channels. */
function colour(name: string, scheme: Scheme): Rgb {
  const value = new RegExp(`--${name}: (?:light-dark\\((#\\w+), (#\\w+)\\)|(#\\w+));`).exec(css);
  if (!value) throw new Error(`colours.css has no --${name}`);
  const hex = value[3] ?? (scheme === "light" ? value[1]! : value[2]!);
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as unknown as Rgb;
}

/** Linear light of an sRGB channel, 0 to 1 (IEC 61966-2-1). */
const linear = (channel: number) =>
  channel / 255 <= 0.04045 ? channel / 255 / 12.92 : ((channel / 255 + 0.055) / 1.055) ** 2.4;

/** Contrast ratio of the Web Content Accessibility Guidelines 2.2 (W3C 2023), 1 to 21. */
function contrast(a: Rgb, b: Rgb): number {
  const [dark, light] = [a, b]
    .map((c) => 0.2126 * linear(c[0]) + 0.7152 * linear(c[1]) + 0.0722 * linear(c[2]))
    .sort((x, y) => x - y);
  return (light! + 0.05) / (dark! + 0.05);
}

/** Full colour-vision deficiency, on linear RGB: Machado, Oliveira & Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009), table 1; the figures from memory. */
const SEEN_BY: Readonly<Record<string, readonly Rgb[]>> = {
  "full colour vision": [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** CIE 1976 L*a*b* of linear RGB under D65. */
function lab(rgb: readonly number[]): Rgb {
  const [r, g, b] = rgb as unknown as Rgb;
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = f(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = f((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function seen(c: Rgb, matrix: readonly Rgb[]): Rgb {
  const light = c.map(linear);
  return lab(
    matrix.map((row) =>
      Math.min(1, Math.max(0, row[0] * light[0]! + row[1] * light[1]! + row[2] * light[2]!)),
    ),
  );
}

const MIXES = ["mix-1", "mix-2", "mix-3", "mix-4", "mix-5"];
const PARTS = ["part-fat", "part-msnf", "part-sugars", "part-other", "part-alcohol", "part-water"];

describe.each(SCHEMES)("in the %s scheme", (scheme) => {
  // WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text.
  test.each([
    ["ink", "paper"],
    ["soft", "paper"],
    ["accent", "paper"],
    ["warning", "paper"],
    ["ink", "card"],
    ["soft", "shade"],
    ["on-accent", "accent"],
    ["on-scoops", "scoops"],
    ["on-dipping", "dipping"],
    ["on-dipping", "paper"],
    ["freezer", "paper"],
  ])("%s reads on %s", (text, ground) => {
    expect(contrast(colour(text, scheme), colour(ground, scheme))).toBeGreaterThanOrEqual(4.5);
  });

  // WCAG 2.2, success criterion 1.4.11: 3 to 1 for what a chart is read by.
  test.each(MIXES)("%s stands out from the paper", (mix) => {
    expect(contrast(colour(mix, scheme), colour("paper", scheme))).toBeGreaterThanOrEqual(3);
  });

  // About 2 is a just noticeable difference side by side (CIE 1976); ten of them keep lines apart across a chart.
  describe.each(Object.entries(SEEN_BY))("with %s", (_, matrix) => {
    test("the first three mixes, which share a chart, are told apart by colour alone", () => {
      for (const [i, a] of MIXES.slice(0, 3).entries()) {
        for (const b of MIXES.slice(i + 1, 3))
          expect(distance(a, b, scheme, matrix), `${a} and ${b}`).toBeGreaterThan(20);
      }
    });

    test("neighbours in a bar are told apart by colour alone", () => {
      for (const [i, a] of PARTS.slice(0, -1).entries()) {
        expect(distance(a, PARTS[i + 1]!, scheme, matrix), a).toBeGreaterThan(10);
      }
    });
  });
});

test.each(Object.entries(PALETTE))("files have the pages' %s", (name, hex) => {
  const page = colour(
    name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`),
    "light",
  );
  const file = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  expect(page).toEqual(file);
});

test("no colour means two things: what scoops, dipping and the freezer are three", () => {
  for (const scheme of SCHEMES)
    for (const [a, b] of [
      ["scoops", "dipping"],
      ["scoops", "freezer"],
      ["dipping", "freezer"],
    ] as const)
      expect(distance(a, b, scheme, SEEN_BY["full colour vision"]!), `${a} and ${b}`).toBeGreaterThan(10);
});

function distance(a: string, b: string, scheme: Scheme, matrix: readonly Rgb[]): number {
  const [p, q] = [a, b].map((name) => seen(colour(name, scheme), matrix));
  return Math.hypot(p![0] - q![0], p![1] - q![1], p![2] - q![2]);
}
