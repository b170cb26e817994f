// `npm start`: prints the balanced demonstration brief, then serves the notebooks and says where.
import {spawnSync} from "node:child_process";
import {build, preview} from "vite";
import {CONFIG, SITE} from "./vite.config.ts";

const DEMO = "datasets/demo/pear-base.json";

const balanced = spawnSync(process.execPath, [...process.execArgv, "lib/cli.ts", "balance", DEMO], {
  stdio: "inherit",
});
if (balanced.status !== 0) process.exit(balanced.status ?? 1);

process.stdout.write("\nPreparing the notebooks …\n");
await build({configFile: CONFIG, logLevel: "error"});

const willOpen = !process.env.CI && !process.argv.includes("--no-open");
const server = await preview({
  configFile: false,
  appType: "mpa",
  // A machine without a browser to open is no trouble either: the address is printed below.
  logLevel: "silent",
  build: {outDir: SITE},
  // A busy port is no trouble: the next free one is taken.
  preview: {host: "localhost", port: 4173, strictPort: false, open: willOpen ? "/notebooks/" : false},
});
const {port} = server.httpServer.address() as {port: number};
process.stdout.write(`\nThe notebooks are at  http://localhost:${port}/notebooks/\nStop with Ctrl+C.\n`);
