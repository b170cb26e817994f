import {spawn} from "node:child_process";
import {fileURLToPath} from "node:url";

/** The notebooks as `npm start` serves them. */
export interface Site {
  /** Where the notebooks are, ending in a slash. */
  readonly address: string;
  /** What was printed until the address was. */
  readonly printed: string;
  close(): void;
}

/**
 * Starts what `npm start` starts, without opening a browser, and waits for the address.
 *
 * @throws Error with what was printed, when it ends before it serves
 */
export function startSite(): Promise<Site> {
  const child = spawn(process.execPath, ["--import", "tsx", "notebooks/kit/site/start.ts", "--no-open"], {
    cwd: fileURLToPath(new URL("../..", import.meta.url)),
    env: {...process.env, NODE_ENV: "production"},
  });
  let printed = "";
  return new Promise((resolve, reject) => {
    const take = (chunk: Buffer) => {
      printed += chunk.toString();
      const address = /http:\/\/localhost:\d+\/notebooks\//.exec(printed)?.[0];
      if (address) resolve({address, printed, close: () => child.kill()});
    };
    child.stdout.on("data", take);
    child.stderr.on("data", take);
    child.on("exit", (code) => reject(new Error(`npm start ended with ${code}:\n${printed}`)));
  });
}
