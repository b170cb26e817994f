import type {Browser, Page} from "playwright-core";

/** A page, and what it tried to reach, complained about or popped up. */
export interface Opened {
  readonly page: Page;
  readonly trouble: string[];
}

/**
 * Opens a page with the network cut off, but for the site that it belongs to.
 *
 * @param origin of the site, `http://localhost:4174`
 * @param serve replaces what a path that holds the key would be served
 */
export async function visit(
  browser: Browser,
  address: string,
  origin: string,
  serve: Readonly<Record<string, string>> = {},
): Promise<Opened> {
  const page = await browser.newPage({viewport: {width: 1280, height: 900}, colorScheme: "light"});
  const trouble: string[] = [];
  await page.route("**/*", (route) => {
    const url = new URL(route.request().url());
    const own = Object.entries(serve).find(([part]) => url.pathname.includes(part));
    if (own) return route.fulfill({body: own[1], contentType: "text/plain"});
    if (["data:", "blob:", "file:"].includes(url.protocol) || url.origin === origin) return route.continue();
    trouble.push(`network: ${url.href}`);
    return route.abort();
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
