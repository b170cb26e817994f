import {fileURLToPath} from "node:url";
import {defineConfig} from "vitest/config";

export default defineConfig({
  test: {
    root: fileURLToPath(new URL("..", import.meta.url)),
    include: ["tests/**/*.test.ts"],
    reporters: ["default", fileURLToPath(new URL("./support/closing-line.ts", import.meta.url))],
    testTimeout: 30_000,
    hookTimeout: 120_000,
  },
});
