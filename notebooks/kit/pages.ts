// Writes each notebook as one self-contained HTML file that opens with a double click, without a server.
import {build, mergeConfig, type UserConfig} from "vite";
import {viteSingleFile} from "vite-plugin-singlefile";
import settings, {NOTEBOOKS} from "./vite.config.ts";

const config = (settings as () => UserConfig)();

for (const [i, path] of NOTEBOOKS.entries()) {
  await build({
    ...mergeConfig(config, {
      plugins: [viteSingleFile({removeViteModuleLoader: true})],
      logLevel: "warn",
      build: {outDir: `${config.root}/dist/notebooks-pages`, emptyOutDir: i === 0, assetsInlineLimit: 1e8},
    }),
    build: {
      ...config.build,
      outDir: `${config.root}/dist/notebooks-pages`,
      emptyOutDir: i === 0,
      assetsInlineLimit: 1e8,
      rollupOptions: {input: `${config.root}/${path}`},
    },
    configFile: false,
  });
}
