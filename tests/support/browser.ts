import {existsSync, mkdtempSync} from "node:fs";
import {tmpdir} from "node:os";
import {join} from "node:path";
import packed from "@sparticuz/chromium";
import {type Browser, chromium, type LaunchOptions} from "playwright-core";
import {packedBrowser} from "./packed-browser.ts";

/** Where a system's own Chromium or Chrome usually lives. */
const USUAL = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
  "/snap/bin/chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  ...["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"].flatMap((folder) =>
    process.env[folder] ? [join(process.env[folder], "Google/Chrome/Application/chrome.exe")] : [],
  ),
];

/**
 * Settings of the packed browser that suit a cloud function, not a test run: in one process, closing a page ends it all; a
 * graphics card made of software takes a third of the time, for pages that draw nothing in three dimensions; and without a
 * zygote, which has the browser loaded and divides for each page, every page starts from the disk.
 */
const UNSUITED = [
  "--single-process",
  "--no-zygote",
  "--disable-web-security",
  "--allow-running-insecure-content",
  "--use-gl=angle",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
];

/** No network but this machine's own, and nothing that the browser might do over it of its own accord. */
const QUIET = [
  "--disable-gpu",
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-quic",
  "--disable-sync",
  "--no-first-run",
];

/**
 * What makes code fast takes time itself. A page of a test lives for some seconds: for most, compiling takes a fifth more than it
 * saves. Pages that search for seconds gain a sixth where the quick compiler, alone, takes what runs longest.
 */
const COMPILING = {
  "short visits": ["--js-flags=--no-maglev --no-turbofan --always-sparkplug"],
  "long searches": ["--js-flags=--no-turbofan --interrupt-budget-for-maglev=400000"],
  /** As a cook's own. */
  measuring: [],
};

/** What the pages are mostly asked for. */
export type Use = keyof typeof COMPILING;

/**
 * A browser to test the pages in: the one that the variable `CHROMIUM` names, else one installed where systems keep
 * theirs, else the one that comes packed with the development dependencies (Linux only).
 *
 * @param use what its pages are mostly asked for
 * @throws Error when there is none: a page that no browser opened is not tested
 */
export async function launchBrowser(use: Use = "short visits"): Promise<Browser> {
  const installed = installedBrowser();
  if (installed)
    return launch({executablePath: installed, args: [...QUIET, ...COMPILING[use], "--no-sandbox"]});
  return launch({
    executablePath: await packedBrowser(),
    args: [...packed.args.filter((arg) => !UNSUITED.includes(arg)), ...QUIET, ...COMPILING[use]],
  });
}

/** Has a browser ready to launch, so that none of many tests that begin at once has to unpack it. */
export async function prepareBrowser(): Promise<void> {
  if (!installedBrowser()) await packedBrowser();
}

/** The browser of the variable `CHROMIUM`, or the system's; none where the packed one is to be taken. */
function installedBrowser(): string | undefined {
  const named = process.env.CHROMIUM;
  if (named && !existsSync(named)) throw new Error(`CHROMIUM names ${named}, which does not exist.`);
  const installed = named ?? USUAL.find((path) => existsSync(path));
  if (!installed && process.platform !== "linux") {
    throw new Error(
      "No Chrome or Chromium found. Install one, or let the variable CHROMIUM name its executable.",
    );
  }
  return installed;
}

async function launch(options: LaunchOptions): Promise<Browser> {
  try {
    return await chromium.launch({
      ...options,
      headless: true,
      env: {...process.env, HOME: mkdtempSync(join(tmpdir(), "browser-"))},
    });
  } catch (error) {
    throw new Error(
      `The browser ${options.executablePath} does not start; let the variable CHROMIUM name another.`,
      {cause: error},
    );
  }
}
