import {createServer} from "node:net";
import type {TestProject} from "vitest/node";
import {prepareBrowser} from "./browser.ts";
import {startSite} from "./notebooks-site.ts";

declare module "vitest" {
  export interface ProvidedContext {
    /** The notebooks as `npm start` serves them, built once for all tests. */
    readonly site: {readonly address: string; readonly printed: string};
  }
}

/** Serves the notebooks before the first test that looks at them. Someone else has the usual port: another must be found. */
export async function setup({provide}: TestProject): Promise<() => void> {
  const busy = createServer()
    .on("error", () => undefined)
    .listen(4173, "localhost");
  const [{address, printed, close}] = await Promise.all([startSite(), prepareBrowser()]);
  provide("site", {address, printed});
  return () => {
    close();
    busy.close();
  };
}
