import {readdirSync, readFileSync} from "node:fs";
import type {Browser, Page} from "playwright-core";
import {afterAll, beforeAll, describe, expect, inject, test} from "vitest";
import {leave, type Opened, resize, sharedBrowser, visit, type Visiting} from "../support/visit.ts";

const NOTEBOOKS = readdirSync("notebooks").filter((name) => name.endsWith(".html"));

const site = inject("site");
const {origin} = new URL(site.address);
let browser: Browser;

beforeAll(async () => {
  browser = await sharedBrowser(origin);
});

/** How a page is opened: its address after the name, and what else is served to it. */
interface Visit extends Visiting {
  readonly hash?: string;
}

/** Opens a notebook of the site with the network cut off. */
function open(name: string, {hash = "", ...how}: Visit = {}): Promise<Opened> {
  return visit(browser, `${site.address}${name}${hash}`, origin, how);
}

const axe = readFileSync("node_modules/axe-core/axe.min.js", "utf8");

/** What axe finds amiss with a page as it stands; of another theme only what colours can change. */
async function barriers(page: Page, what: "everything" | "colours" = "everything"): Promise<string[]> {
  if (!(await page.evaluate<boolean>('"axe" in window'))) await page.evaluate(axe);
  return page.evaluate<
    string[]
  >(`axe.run(document, {resultTypes: ["violations"], ${what === "colours" ? 'preload: false, runOnly: ["color-contrast", "link-in-text-block"]' : ""}}).then(({violations}) =>
    violations.map(({id, nodes}) => id + ": " + nodes.map(({target}) => target).join(" | ")))`);
}

interface Phone {
  readonly width: number;
  readonly height: number;
  /** Cumulative layout shift. */
  readonly shift: number;
  /** What a finger has to hit and is lower than 44 px; links within a sentence are as high as it. */
  readonly low: readonly string[];
  /** Boxes whose letters are smaller than 16 px. */
  readonly small: readonly string[];
}
const PHONE = `(() => {
  const seen = (e) => e.checkVisibility({visibilityProperty: true, contentVisibilityAuto: true}) && e.getBoundingClientRect().width > 0;
  const all = (selector) => [...document.querySelectorAll(selector)].filter(seen);
  const high = (e) => e.getBoundingClientRect().height >= 43.5;
  const name = (e) => e.tagName + " " + Math.round(e.getBoundingClientRect().height) + " " + (e.getAttribute("aria-label") || e.textContent).trim().slice(0, 40);
  return new Promise((done) => {
    let shift = 0;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) if (!entry.hadRecentInput) shift += entry.value;
    }).observe({type: "layout-shift", buffered: true});
    setTimeout(() => done({
      width: document.documentElement.scrollWidth,
      height: document.documentElement.scrollHeight,
      shift,
      low: all("button, summary, select, textarea, input, a[href]")
        .filter((e) => !high(e) && !(e.closest("label") && high(e.closest("label"))))
        .filter((e) => !(e.tagName === "A" && getComputedStyle(e).display === "inline"))
        .map(name),
      small: all("input:not([type=range], [type=checkbox], [type=radio]), select, textarea")
        .filter((e) => parseFloat(getComputedStyle(e).fontSize) < 16)
        .map(name),
    }), 100);
  });
})()`;

describe.each(NOTEBOOKS)("%s", (name) => {
  let page: Page;
  let trouble: string[];

  beforeAll(async () => {
    ({page, trouble} = await open(name, {folds: "as they are", size: {width: 390, height: 844}}));
  });

  afterAll(() => leave(page));

  test("runs without the network and without an error", async () => {
    expect(await page.locator("main h1").count()).toBe(1);
    expect(await page.locator(".observablehq--error, .observablehq--inspect").allTextContents()).toEqual([]);
    expect(trouble).toEqual([]);
  });

  test("shows nothing that is hidden", async () => {
    const seen = await page.evaluate<string[]>(
      `[...document.querySelectorAll("[hidden]")].filter((e) => e.checkVisibility()).map((e) => e.outerHTML.slice(0, 200))`,
    );
    expect(seen).toEqual([]);
  });

  test("names every control", async () => {
    const nameless = await page.evaluate<
      string[]
    >(`[...document.querySelectorAll("input, select, textarea, button")]
      .filter((e) => !e.labels?.[0]?.textContent.trim() && !e.getAttribute("aria-label") && !(e.tagName === "BUTTON" && (e.hidden || e.textContent.trim())))
      .map((e) => e.outerHTML)`);
    expect(nameless).toEqual([]);
  });

  test("fits a phone, and the finger on it", async () => {
    const seen = await page.evaluate<Phone>(PHONE);
    expect(seen.width).toBe(390);
    expect(seen.height).toBeLessThan(4000);
    // Core Web Vitals call up to 0.1 good.
    expect(seen.shift).toBeLessThan(0.1);
    // WCAG 2.2, 2.5.5; and below 16 px a phone enlarges the page when a box is touched.
    expect(seen.low).toEqual([]);
    expect(seen.small).toEqual([]);
  });

  test("bars nobody on a phone: axe (WCAG 2.2 A and AA, and its own good practices) finds nothing", async () => {
    expect(await barriers(page)).toEqual([]);
  });

  test("is dark where the reader's system is, and bars nobody there", async () => {
    await page.emulateMedia({colorScheme: "dark"});
    const [paper, ink] = await page.evaluate<string[]>(
      `["backgroundColor", "color"].map((key) => getComputedStyle(document.body)[key])`,
    );
    expect(brightness(paper!)).toBeLessThan(60);
    expect(brightness(ink!)).toBeGreaterThan(200);
    expect(await barriers(page, "colours")).toEqual([]);
  });

  test("is short on a desk: what is not the answer is folded away", async () => {
    await page.emulateMedia({colorScheme: "light"});
    await resize(page, {width: 1280, height: 900});
    expect(await page.evaluate<number>("document.documentElement.scrollHeight")).toBeLessThan(4000);
  });

  test("says little before its answer: one short sentence, and shorter ones above the controls", async () => {
    if (name === "index.html") return;
    await page.locator(".verdict").first().waitFor();
    const [sentences, hints] = await page.evaluate<[number[], number[]]>(`(() => {
      const verdict = document.querySelector(".verdict");
      const before = (e) => e.checkVisibility() && verdict.compareDocumentPosition(e) & Node.DOCUMENT_POSITION_PRECEDING;
      const words = (selector) => [...document.querySelectorAll("main " + selector)].filter(before)
        .map((e) => e.innerText.split(/\\s+/).filter(Boolean).length).filter(Boolean);
      return [words("p:not(.hint, .tools, [role])"), words(".hint")];
    })()`);
    expect(sentences).toHaveLength(1);
    expect(Math.max(...sentences, ...hints)).toBeLessThan(20);
  });

  test("bars nobody on a desk", async () => {
    expect(await barriers(page)).toEqual([]);
  });

  test("bars nobody on a desk in the dark", async () => {
    await page.emulateMedia({colorScheme: "dark"});
    expect(await barriers(page, "colours")).toEqual([]);
  });

  test("prints, without the controls", async () => {
    const pdf = await page.pdf({format: "A4"});
    expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
    await page.emulateMedia({media: "print"});
    expect(await page.locator("button:visible, input:visible, details.code:visible").count()).toBe(0);
  });
});

test("folds follow a tablet that is turned, but not those that the cook has turned", async () => {
  const {page} = await open("design-a-flavour.html", {folds: "as they are"});
  const opened = () =>
    page.evaluate<string[]>(
      `[...document.querySelectorAll("main details[open]:not(.code) > summary")].map((e) => e.textContent.trim().split("\\n")[0])`,
    );
  const wide = await opened();
  await resize(page, {width: 820, height: 1180});
  const narrow = await opened();
  expect(narrow.length).toBeLessThan(wide.length);
  expect(wide).toEqual(expect.arrayContaining(narrow));
  // What stands open on a narrow screen as it is loaded is what has stayed open.
  await page.reload({waitUntil: "networkidle"});
  await page.locator("main h1").waitFor();
  expect(await opened()).toEqual(narrow);
  const own = wide.find((words) => !narrow.includes(words))!;
  const fold = page.locator("main summary", {hasText: own}).first();
  await fold.press("Enter");
  await resize(page, {width: 1280, height: 900});
  expect(await opened()).toEqual(wide);
  await resize(page, {width: 820, height: 1180});
  expect(await opened()).toContain(own);
  await leave(page);
});

test("the home page leads to every notebook, and so does the head of each", async () => {
  const {page} = await open("index.html");
  const others = NOTEBOOKS.filter((name) => name !== "index.html").map((name) => `./${name}`);
  for (const place of ["main a", ".masthead nav a"]) {
    const links = await page
      .locator(place)
      .evaluateAll((all) =>
        all.map((link) => (link as unknown as {getAttribute(name: string): string}).getAttribute("href")),
      );
    expect(links.sort()).toEqual(others);
  }
  await leave(page);
});

/** Mean of the three channels of an `rgb(…)` text, 0 to 255. */
function brightness(rgb: string): number {
  const [r, g, b] = rgb.match(/[\d.]+/g)!.map(Number);
  return (r! + g! + b!) / 3;
}
