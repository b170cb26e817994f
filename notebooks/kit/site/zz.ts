import config from "./vite.config.ts";
import {build} from "vite";
const t = performance.now();
console.log("loaded", performance.now());
await build({...config(), configFile: false, logLevel: "error"});
console.log("built", performance.now() - t);
