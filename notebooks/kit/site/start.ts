// `npm start`: prints the balanced demonstration brief, then serves the notebooks and says where.
import {spawnSync} from "node:child_process";
import {existsSync} from "node:fs";
import {build, type Plugin, preview} from "vite";
import {CONFIG, SITE} from "./vite.config.ts";

const DEMO = "datasets/demo/pear-base.json";

const balanced = spawnSync(process.execPath, [...process.execArgv, "lib/cli.ts", "balance", DEMO], {
  stdio: "inherit",
});
if (balanced.status !== 0) process.exit(balanced.status ?? 1);

process.stdout.write("\nPreparing the notebooks …\n");
await build({configFile: CONFIG, logLevel: "error"});

/** An asset bears the hash of what is in it in its name: the browser need not ask again, a hundred times a page. */
const keptAssets: Plugin = {
  name: "kept-assets",
  configurePreviewServer({middlewares}) {
    middlewares.use(({url}, answer, next) => {
      if (url?.startsWith("/assets/") && existsSync(SITE + url))
        answer.setHeader("Cache-Control", "max-age=31536000, immutable");
      next();
    });
  },
};

const willOpen = !process.env.CI && !process.argv.includes("--no-open");
const server = await preview({
  configFile: false,
  appType: "mpa",
  // A machine without a browser to open is no trouble either: the address is printed below.
  logLevel: "silent",
  plugins: [keptAssets],
  build: {outDir: SITE},
  // A busy port is no trouble: the next free one is taken.
  preview: {host: "localhost", port: 4173, strictPort: false, open: willOpen ? "/notebooks/" : false},
});
const {port} = server.httpServer.address() as {port: number};
process.stdout.write(`\nThe notebooks are at  http://localhost:${port}/notebooks/\nStop with Ctrl+C.\n`);
