// Writes each notebook as one self-contained HTML file that opens with a double click, without a server.
import {rmSync} from "node:fs";
import {build, type UserConfig} from "vite";
import {viteSingleFile} from "vite-plugin-singlefile";
import settings, {NOTEBOOKS} from "./vite.config.ts";

const config = (settings as () => UserConfig)();
const site = `${config.root}/dist/notebooks-parts`;

// All of them are built at once, as for the site, and each is then put together: to build each by itself takes twice as long.
await build({
  ...config,
  configFile: false,
  logLevel: "error",
  build: {...config.build, outDir: site, modulePreload: false},
});
for (const [i, path] of NOTEBOOKS.entries()) {
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
