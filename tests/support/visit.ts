import type {Browser, BrowserContext, Page} from "playwright-core";

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
}

/** One profile for each browser: what a page has loaded, the next one takes from the cache. */
const profiles = new WeakMap<Browser, Promise<BrowserContext>>();

function profileOf(browser: Browser): Promise<BrowserContext> {
  const known = profiles.get(browser);
  if (known) return known;
  const fresh = browser.newContext({viewport: {width: 1280, height: 900}, colorScheme: "light"});
  profiles.set(browser, fresh);
  return fresh;
}

/**
 * Opens a page. The browser reaches no network but this machine's own; whatever goes elsewhere than to the page's site is trouble.
 *
 * @param origin of the site, `http://localhost:4174`
 */
export async function visit(
  browser: Browser,
  address: string,
  origin: string,
  {serve = {}, folds = "opened"}: Visiting = {},
): Promise<Opened> {
  const page = await (await profileOf(browser)).newPage();
  // In each document that the page goes on to; a page that is gone by then needs none.
  if (folds === "opened")
    page.on("domcontentloaded", (loaded) => void loaded.evaluate(OPEN_FOLDS).catch(() => undefined));
  const trouble: string[] = [];
  // Only where something is replaced: a page whose requests are looked into has no cache.
  for (const [part, body] of Object.entries(serve))
    await page.route(
      ({pathname}) => pathname.includes(part),
      (route) => route.fulfill({body, contentType: "text/plain"}),
    );
  page.on("request", (request) => {
    const url = new URL(request.url());
    if (!["data:", "blob:", "file:"].includes(url.protocol) && url.origin !== origin)
      trouble.push(`network: ${url.href}`);
  });
  page.on("console", (message) => message.type() === "error" && trouble.push(`console: ${message.text()}`));
  page.on("pageerror", (error) => trouble.push(`page: ${String(error)}`));
  page.on("dialog", (dialog) => {
    trouble.push(`dialog: ${dialog.message()}`);
    return dialog.dismiss();
  });
  await page.goto(address, {waitUntil: "networkidle"});
  // A busy machine can be quiet on the network before the first cell has run.
  await page.locator("main h1").first().waitFor();
  return {page, trouble};
}
