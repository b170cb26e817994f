import type {Browser, BrowserContext, Page} from "playwright-core";
import {launchBrowser, type Use} from "./browser.ts";

// Each call to a page notes where it came from: ten lines of that say it, a hundred take longer than many a call.
Error.stackTraceLimit = 10;

/** A page, and what it tried to reach, complained about or popped up. */
export interface Opened {
  readonly page: Page;
  readonly trouble: string[];
}

/** Opens what is folded away, as a cook who wants to see it would: what is asked of a page is mostly asked of all of it. */
const OPEN_FOLDS = `(() => {
  const open = () => {
    for (const fold of document.querySelectorAll("details.fold:not([data-seen])")) {
      fold.dataset.seen = "";
      fold.open = true;
    }
  };
  open();
  new MutationObserver(open).observe(document, {childList: true, subtree: true});
})()`;

/** How a page is opened. */
export interface Visiting {
  /** Replaces what a path that holds the key would be served. */
  readonly serve?: Readonly<Record<string, string>>;
  /** Whether its folds are opened at once, or stand as they do for a cook; opened, unless given. */
  readonly folds?: "opened" | "as they are";
  /** Size of the window; that of a desk, unless given. */
  readonly size?: Size;
}

/** Size of a window, px. */
interface Size {
  readonly width: number;
  readonly height: number;
}

/** A tab of a browser: what happens in it is told to whoever has it open. */
interface Tab {
  readonly page: Page;
  origin: string;
  folds: "opened" | "as they are";
  trouble: string[];
}

/** One profile for each browser: what a page has loaded, the next one takes from the cache. */
const profiles = new WeakMap<Browser, Promise<BrowserContext>>();

/**
 * Tabs that were left: a page that opens in the process of the one before takes half the work of one in a process of its own.
 */
const idle = new WeakMap<Browser, Tab[]>();
const tabs = new WeakMap<Page, Tab>();

const AS_OPENED = {width: 1280, height: 900};

function profileOf(browser: Browser): Promise<BrowserContext> {
  const known = profiles.get(browser);
  if (known) return known;
  const fresh = browser.newContext({viewport: AS_OPENED, colorScheme: "light"});
  profiles.set(browser, fresh);
  return fresh;
}

let shared: {readonly use: Use; readonly browser: Promise<Browser>} | undefined;

/**
 * A blank profile in the browser of this worker, which ends with it: nothing is stored, and no page is open that was not left. All
 * that pages have loaded is still loaded, but for another use than before.
 *
 * @param origin of the site, `http://localhost:4174`
 */
export async function blankProfile(origin: string, use: Use = "short visits"): Promise<BrowserContext> {
  if (shared && shared.use !== use) await (await shared.browser).close();
  if (shared?.use !== use) shared = {use, browser: launchBrowser(use)};
  const browser = await shared.browser;
  const profile = await profileOf(browser);
  const [tab = await newTab(browser), ...others] = idle.get(browser) ?? [];
  idle.set(browser, [tab, ...others]);
  const left = new Set([tab, ...others].map(({page}) => page));
  for (const context of browser.contexts()) if (context !== profile) await context.close();
  for (const page of profile.pages()) if (!left.has(page)) await page.close();
  profile.removeAllListeners("page");
  const session = await profile.newCDPSession(tab.page);
  await session.send("Storage.clearDataForOrigin", {origin, storageTypes: "indexeddb,local_storage"});
  await session.detach();
  return profile;
}

/** The browser of this worker, with a blank profile to visit in. */
export async function sharedBrowser(origin: string, use?: Use): Promise<Browser> {
  return (await blankProfile(origin, use)).browser()!;
}

async function newTab(browser: Browser): Promise<Tab> {
  const page = await (await profileOf(browser)).newPage();
  const tab: Tab = {page, origin: "", folds: "opened", trouble: []};
  // In each document that the page goes on to; a page that is gone by then needs none.
  page.on("domcontentloaded", (loaded) => {
    if (tab.folds === "opened") void loaded.evaluate(OPEN_FOLDS).catch(() => undefined);
  });
  page.on("request", (request) => {
    const url = new URL(request.url());
    if (!["data:", "blob:", "file:", "about:"].includes(url.protocol) && url.origin !== tab.origin)
      tab.trouble.push(`network: ${url.href}`);
  });
  page.on(
    "console",
    (message) => message.type() === "error" && tab.trouble.push(`console: ${message.text()}`),
  );
  page.on("pageerror", (error) => tab.trouble.push(`page: ${String(error)}`));
  // A tab may share its process with one that is killed on purpose: it is not taken again.
  page.on("crash", () => idle.set(browser, idle.get(browser)?.filter((one) => one !== tab) ?? []));
  page.on("dialog", (dialog) => {
    tab.trouble.push(`dialog: ${dialog.message()}`);
    return dialog.dismiss();
  });
  tabs.set(page, tab);
  return tab;
}

/**
 * Opens a page, in a tab that was left if there is one. The browser reaches no network but this machine's own; whatever goes
 * elsewhere than to the page's site is trouble.
 *
 * @param origin of the site, `http://localhost:4174`
 */
export async function visit(
  browser: Browser,
  address: string,
  origin: string,
  {serve = {}, folds = "opened", size = AS_OPENED}: Visiting = {},
): Promise<Opened> {
  const tab = idle.get(browser)?.pop() ?? (await newTab(browser));
  const {page} = tab;
  const trouble: string[] = [];
  Object.assign(tab, {origin, folds, trouble});
  if (size !== AS_OPENED) await page.setViewportSize(size);
  // Only where something is replaced: a page whose requests are looked into has no cache.
  for (const [part, body] of Object.entries(serve))
    await page.route(
      ({pathname}) => pathname.includes(part),
      (route) => route.fulfill({body, contentType: "text/plain"}),
    );
  await page.goto(address, {waitUntil: "networkidle"});
  // A busy machine can be quiet on the network before the first cell has run.
  await page.locator("main h1").first().waitFor();
  return {page, trouble};
}

/** Whether a page has been as high, and as wide, for ten frames in a row. */
const AT_REST = `new Promise((done) => {
  let size = "", same = 0;
  const look = () => {
    const {scrollWidth, scrollHeight} = document.documentElement;
    same = size === scrollWidth + " " + scrollHeight ? same + 1 : 0;
    size = scrollWidth + " " + scrollHeight;
    if (same === 10) done();
    else requestAnimationFrame(look);
  };
  look();
})`;

/**
 * Gives a page another width or height, and waits until it is at rest: it draws itself anew a moment later, and a click in that
 * moment can fall beside the button.
 */
export async function resize(
  page: Page,
  size: {readonly width: number; readonly height: number},
): Promise<void> {
  await page.setViewportSize(size);
  await page.evaluate(AT_REST);
}

/** Leaves a page that was visited: its tab is empty, and as it was, for the next one. */
export async function leave(page: Page | undefined): Promise<void> {
  const tab = page && tabs.get(page);
  if (!tab) return;
  tab.trouble = [];
  await page.unrouteAll();
  // No page of the site, but of its origin: what the tab remembers is forgotten after the page's own farewell.
  await page.goto(`${tab.origin}/nowhere`);
  await page.evaluate("sessionStorage.clear()");
  await page.emulateMedia({media: null, colorScheme: "light"});
  await page.setViewportSize(AS_OPENED);
  const browser = page.context().browser()!;
  idle.set(browser, [...(idle.get(browser) ?? []), tab]);
}
