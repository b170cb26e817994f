import {build} from "vite";
import {CONFIG} from "./vite.config.ts";
const t = performance.now();
console.log("loaded", performance.now());
await build({configFile: CONFIG, logLevel: "error"});
console.log("built", performance.now() - t);
