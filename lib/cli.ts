#!/usr/bin/env node
import {readFileSync, writeFileSync} from "node:fs";
import {fileURLToPath} from "node:url";
import {main} from "./command/main.ts";

const own = (path: string) => fileURLToPath(new URL(path, import.meta.url));

process.exitCode = await main(process.argv.slice(2), {
  read: (path) => readFileSync(path === "-" ? 0 : path),
  write: (path, text) => writeFileSync(path, text),
  say: (text) => process.stdout.write(text),
  note: (text) => process.stderr.write(text),
  pantry: own("../datasets/ingredients.csv"),
  package: own("../package.json"),
});
