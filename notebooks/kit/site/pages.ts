// Writes notebooks as self-contained HTML files that open with a double click, without a server: all of them, or those whose names
// follow (`npm run notebooks:pages -- design-a-flavour`).
import {rmSync} from "node:fs";
import {basename} from "node:path";
import {NOTEBOOKS} from "./notebooks.ts";

const names = NOTEBOOKS.map((path) => basename(path, ".html"));
const asked = process.argv.slice(2);
const unknown = asked.find((name) => !names.includes(name));
if (unknown !== undefined) {
  process.stderr.write(
    `There is no notebook “${unknown}”. Name one of these, or none for all: ${names.join(", ")}.\n`,
  );
  process.exit(1);
}

// Seconds of loading, which a name that is none does not wait for.
const {build} = await import("vite");
const {viteSingleFile} = await import("vite-plugin-singlefile");
const config = (await import("./vite.config.ts")).default();
const site = `${config.root}/dist/notebooks-parts`;
const wanted = NOTEBOOKS.filter((path) => asked.length === 0 || asked.includes(basename(path, ".html")));

// Those wanted are built at once, as for the site, and each is then put together: to build each by itself takes twice as long.
await build({
  ...config,
  configFile: false,
  logLevel: "error",
  build: {
    ...config.build,
    outDir: site,
    modulePreload: false,
    rolldownOptions: {
      ...config.build?.rolldownOptions,
      input: wanted.map((path) => `${config.root}/${path}`),
    },
  },
});
for (const [i, path] of wanted.entries()) {
  await build({
    root: site,
    base: "./",
    configFile: false,
    logLevel: "error",
    plugins: [viteSingleFile({removeViteModuleLoader: true})],
    build: {
      outDir: `${config.root}/dist/notebooks-pages`,
      emptyOutDir: i === 0,
      assetsInlineLimit: 1e8,
      // The parts are small already.
      minify: false,
      cssMinify: false,
      reportCompressedSize: false,
      rollupOptions: {input: `${site}/${path}`},
    },
  });
}
rmSync(site, {recursive: true});
process.stdout.write("The pages are in dist/notebooks-pages/notebooks/\n");
