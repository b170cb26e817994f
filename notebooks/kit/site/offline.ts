import {fileURLToPath} from "node:url";
import type {Plugin} from "vite";

// The notebooks' standard library fetches its packages from a content network. Those named here are taken from
// node_modules instead; any other fails at first use, saying what to do, and never reaches for the network.
const INSTALLED = new Set(["@observablehq/plot", "@observablehq/inputs", "d3-dsv", "htl"]);
const UNUSED = /\/stdlib\/(dot|duckdb|leaflet|mapboxgl|mermaid|tex|vega-lite|xlsx|zip)\.js/;
const NOT_INSTALLED = fileURLToPath(new URL("./not-installed.js", import.meta.url));
const NETWORK = "https://cdn.jsdelivr.net/npm/";
const ADDRESS =
  /https:\/\/cdn\.jsdelivr\.net\/npm\/((?:@[\w.-]+\/)?[\w.-]+)(?:@[\w.]+)?\/(\+esm|dist\/[\w.-]+\.css)/g;

/** Makes the notebooks independent of the network, when served and when built. */
export function offline(): Plugin {
  return {
    name: "offline-notebooks",
    enforce: "pre",
    transform(code, id) {
      if (!id.includes("/notebook-kit/dist/")) return undefined;
      if (UNUSED.test(id)) return {code: `import ${JSON.stringify(NOT_INSTALLED)};`, map: null};
      if (!code.includes(NETWORK)) return undefined;
      const local = code.replace(ADDRESS, (_, name: string, path: string) => {
        if (!INSTALLED.has(name)) return NOT_INSTALLED;
        return path === "+esm" ? name : `${name}/${path}`;
      });
      return {code: local.replaceAll(NETWORK, "not-installed:"), map: null};
    },
  };
}
