import {execFile} from "node:child_process";
import {existsSync, mkdirSync, mkdtempSync, renameSync, rmSync} from "node:fs";
import {join} from "node:path";
import {fileURLToPath} from "node:url";
import {promisify} from "node:util";

const CACHE = fileURLToPath(new URL("../../node_modules/.cache/", import.meta.url));
const HOME = join(CACHE, "browser");

/** The package unpacks into the system's folder for what is temporary; given another one, it unpacks there. */
const UNPACK = `import packed from "@sparticuz/chromium"; await packed.executablePath();`;

/**
 * The browser that comes packed with the development dependencies, unpacked beside them (200 MB, two seconds, once after
 * `npm ci`). It appears there whole: whoever else unpacks at the same moment, or was stopped halfway, leaves no half of it.
 *
 * @returns the path of its executable
 * @throws Error when it cannot be unpacked
 */
export async function packedBrowser(): Promise<string> {
  const executable = join(HOME, "chromium");
  if (existsSync(executable)) return executable;
  mkdirSync(CACHE, {recursive: true});
  const half = mkdtempSync(`${HOME}-`);
  try {
    await promisify(execFile)(process.execPath, ["--input-type=module", "--eval", UNPACK], {
      cwd: CACHE,
      env: {...process.env, TMPDIR: half},
    });
    renameSync(half, HOME);
  } catch (error) {
    // Another was quicker: a folder that holds something is not replaced.
    if (!existsSync(executable))
      throw new Error("The packed browser cannot be unpacked; is there room for 200 MB?", {cause: error});
  } finally {
    rmSync(half, {recursive: true, force: true});
  }
  return executable;
}
