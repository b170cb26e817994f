// Writes each notebook as one self-contained HTML file that opens with a double click, without a server.
import {build, type UserConfig} from "vite";
import {viteSingleFile} from "vite-plugin-singlefile";
import settings, {NOTEBOOKS} from "./vite.config.ts";

const config = (settings as () => UserConfig)();

for (const [i, path] of NOTEBOOKS.entries()) {
  await build({
    ...config,
    configFile: false,
    logLevel: "error",
    plugins: [...(config.plugins ?? []), viteSingleFile({removeViteModuleLoader: true})],
    build: {
      ...config.build,
      outDir: `${config.root}/dist/notebooks-pages`,
      emptyOutDir: i === 0,
      assetsInlineLimit: 1e8,
      rollupOptions: {input: `${config.root}/${path}`},
    },
  });
}
process.stdout.write("The pages are in dist/notebooks-pages/notebooks/\n");
