import {readdirSync} from "node:fs";

const root = new URL("../../../", import.meta.url);

/** Every notebook, as a path from the repository's root. */
export const NOTEBOOKS = readdirSync(new URL("notebooks", root))
  .filter((name) => name.endsWith(".html"))
  .map((name) => `notebooks/${name}`);
