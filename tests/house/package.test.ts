import {spawnSync} from "node:child_process";
import {cpSync, existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync} from "node:fs";
import {createServer} from "node:http";
import type {AddressInfo} from "node:net";
import {join} from "node:path";
import {fileURLToPath} from "node:url";
import {checkPackage, createPackageFromTarballData} from "@arethetypeswrong/core";
import {build as esbuild} from "esbuild";
import type {Browser} from "playwright-core";
import {publint} from "publint";
import {build, createLogger, type Rolldown} from "vite";
import {afterAll, beforeAll, describe, expect, test} from "vitest";
import {launchBrowser} from "../support/browser.ts";
import {ENTRIES} from "../support/library.ts";
import {type PackedProject, packedProject} from "../support/packed.ts";

let project: PackedProject;
beforeAll(() => {
  project = packedProject();
}, 120_000);
afterAll(() => project.remove());

/** A mix of two ingredients that has one answer: 12 % sugar in water. */
const BRIEF = `{
  batch: 1000,
  ingredients: [
    {name: "water", composition: {water: 100}, price: 0},
    {name: "sugar", composition: {sucrose: 100}, price: 1.1},
  ],
  targets: {sugars: {equal: 12}},
}`;

describe("the packed library in an empty project", () => {
  test("balances a brief, reads the data that come with it and draws, from JavaScript", () => {
    project.write(
      "use.mjs",
      `import {readFileSync} from "node:fs";
import {balance, includedPantry, pantryOf} from "mixwright";
import {freezingCurveSvg, readPantryCsv, readRecipeJson} from "mixwright/files";
const answer = balance(${BRIEF});
const data = readFileSync(new URL(import.meta.resolve("mixwright/datasets/ingredients.csv")), "utf8");
const pantry = pantryOf(readPantryCsv(data));
if (pantry.ingredients.length !== includedPantry().ingredients.length) throw new Error("two pantries");
const recipe = await readRecipeJson('{"name": "eggs", "ingredients": [{"name": "whole milk", "measure": "2 cups"}]}', pantry);
const svg = await freezingCurveSvg(answer.freezing.curve);
const schema = JSON.parse(readFileSync(new URL(import.meta.resolve("mixwright/datasets/schemas/brief.schema.json")), "utf8"));
console.log(JSON.stringify({
  status: answer.status, grams: answer.amounts.map(({grams}) => grams), milk: recipe.lines[0].grams, svg, title: schema.title,
}));`,
    );
    const told = JSON.parse(project.node("use.mjs")) as Record<string, unknown>;
    expect(told).toMatchObject({status: "optimal", title: "Brief of a frozen-dessert mix"});
    expect((told.grams as number[]).map(Math.round)).toEqual([880, 120]);
    // 2 cups of milk at 244 g: USDA SR28, NDB 01077.
    expect(told.milk).toBe(488);
    expect(told.svg).toContain("Temperature (°C)");
  });

  test("every entry can be imported and required, with the names that its source exports", () => {
    const entries = JSON.stringify(Object.keys(ENTRIES));
    const told = "console.log(JSON.stringify(all.map((entry) => Object.keys(entry).sort())))";
    project.write(
      "all.mjs",
      `const all = await Promise.all(${entries}.map((entry) => import(entry)));\n${told}`,
    );
    project.write(
      "all.cjs",
      `const all = ${entries}.map((entry) => require(entry));\n${told};
if (require("mixwright").balance(${BRIEF}).status !== "optimal") throw new Error("no answer");`,
    );
    const names = Object.values(ENTRIES).map((entry) => Object.keys(entry).sort());
    expect(JSON.parse(project.node("all.mjs"))).toEqual(names);
    expect(
      (JSON.parse(project.node("all.cjs")) as string[][]).map((entry) =>
        entry.filter((name) => name !== "__esModule"),
      ),
    ).toEqual(names);
  });

  test("loads and balances where the packages for drawing, units and large searches are not installed", () => {
    const bare = join(project.folder, "bare/node_modules");
    cpSync(join(project.folder, "node_modules/mixwright"), join(bare, "mixwright"), {recursive: true});
    mkdirSync(bare, {recursive: true});
    for (const name of ["javascript-lp-solver", "zod", "d3-dsv", "fastest-levenshtein"])
      symlinkSync(
        fileURLToPath(new URL(`../../node_modules/${name}`, import.meta.url)),
        join(bare, name),
        "junction",
      );
    const run = project.write(
      "bare/use.mjs",
      `for (const entry of ${JSON.stringify(Object.keys(ENTRIES))}) await import(entry);
const {balance} = await import("mixwright");
console.log(balance(${BRIEF}).status);`,
    );
    expect(project.node(run).trim()).toBe("optimal");
  });

  test("runs its command, and stops with one line at a mistake", () => {
    const cli = join(project.folder, "node_modules/mixwright/dist/cli.js");
    const bin = JSON.parse(
      readFileSync(join(project.folder, "node_modules/mixwright/package.json"), "utf8"),
    ) as {bin: Record<string, string>};
    expect(join(project.folder, "node_modules/mixwright", bin.bin.mixwright ?? "")).toBe(cli);
    expect(readFileSync(cli, "utf8")).toMatch(/^#!\/usr\/bin\/env node\n/);
    project.write(
      "brief.json",
      `{"ingredients": ["whole milk", "sucrose"], "targets": {"sugars": {"equal": 12}}}`,
    );
    const answer = JSON.parse(project.node(cli, "balance", "brief.json", "--json")) as {status: string};
    expect(answer.status).toBe("optimal");
    project.write("wrong.json", `{"ingredients": ["whole mlik"]}`);
    const {status, stderr} = spawnSync(process.execPath, [cli, "balance", "wrong.json"], {
      cwd: project.folder,
      encoding: "utf8",
    });
    expect(status).toBe(2);
    expect(stderr).toMatch(/^wrong\.json.*did you mean "whole milk".*\n$/);
  });

  test("has types that check strictly, its own declarations included", () => {
    project.write(
      "use.ts",
      `import {balance, fromLabel, InputError, type Answer, type BriefInput, type Composition} from "mixwright";
const brief: BriefInput = ${BRIEF};
const answer: Answer = balance(brief);
if (answer.status === "optimal") {
  const grams: number[] = answer.amounts.map((amount) => amount.grams);
  const composition: Composition = answer.composition;
  console.log(grams, composition.sucrose);
}
// @ts-expect-error -- no such class
fromLabel({name: "milk", fat: 3.6, carbohydrate: 4.8, sugars: 4.8, protein: 3.4, salt: 0.1}, "diary");
// @ts-expect-error -- a price is a number
balance({ingredients: [{name: "milk", price: "1"}]});
export {InputError};`,
    );
    project.write(
      "tsconfig.json",
      `{"compilerOptions": {"module": "nodenext", "target": "es2022", "lib": ["es2023", "dom"], "types": [], "strict": true, "exactOptionalPropertyTypes": true, "noEmit": true, "skipLibCheck": false}, "files": ["use.ts"]}`,
    );
    const tsc = fileURLToPath(new URL("../../node_modules/.bin/tsc", import.meta.url));
    const {status, stdout} = spawnSync(tsc, ["-p", "."], {
      cwd: project.folder,
      encoding: "utf8",
      shell: process.platform === "win32",
    });
    expect(stdout).toBe("");
    expect(status).toBe(0);
  });

  test("bundles for a browser: nothing of Node is left, and no bundler complains", async () => {
    const main = project.write(
      "main.js",
      `import {balance} from "mixwright";\nexport const answer = balance(${BRIEF});`,
    );
    const complaints: string[] = [];
    const logger = createLogger("warn");
    logger.warn = logger.warnOnce = (text) => complaints.push(text);
    const {output} = (await build({
      root: project.folder,
      configFile: false,
      customLogger: logger,
      build: {
        outDir: "out",
        target: "es2022",
        rolldownOptions: {
          input: main,
          preserveEntrySignatures: "strict",
          output: {entryFileNames: "main.js"},
        },
      },
    })) as Rolldown.RolldownOutput;
    const code = output.map((piece) => (piece.type === "chunk" ? piece.code : "")).join("\n");
    expect(code.length).toBeGreaterThan(10_000);
    expect(code).not.toMatch(/(?:from|import)\s*\(?\s*["'`](?:node:|fs["'`]|path["'`]|child_process["'`])/);
    expect(complaints.filter((text) => /externalized|node:/.test(text))).toEqual([]);
    // The second engine is 3.5 MB of WebAssembly.
    expect(output.map(({fileName}) => fileName).filter((name) => name.endsWith(".wasm"))).toEqual([]);
    // What the bundle does, without the library beside it.
    const run = project.write("run.mjs", `console.log((await import("./out/main.js")).answer.status);`);
    expect(project.node(run).trim()).toBe("optimal");
  }, 60_000);

  describe("bundled for a browser by esbuild without settings", () => {
    const entries = Object.keys(ENTRIES).filter((entry) => entry !== "mixwright/highs");
    const fileOf = (entry: string) => `${entry.replace("/", "-")}.js`;
    const warned: unknown[] = [];
    let told: Record<string, unknown>;

    beforeAll(async () => {
      for (const entry of entries) {
        const main = project.write(
          fileOf(entry),
          `import * as all from "${entry}";
import {balance} from "mixwright";
export default [Object.keys(all).sort(), balance(${BRIEF}).status];`,
        );
        // Each by itself: what one needs must not come along with another.
        const {warnings} = await esbuild({
          entryPoints: [main],
          bundle: true,
          splitting: true,
          format: "esm",
          platform: "browser",
          outdir: join(project.folder, `out-${fileOf(entry)}`),
          absWorkingDir: project.folder,
          logLevel: "silent",
        });
        warned.push(...warnings);
      }
      const run = project.write(
        "bundles.mjs",
        `const told = {};
for (const [entry, path] of ${JSON.stringify(entries.map((entry) => [entry, `./out-${fileOf(entry)}/${fileOf(entry)}`]))})
  told[entry] = await import(path).then((bundle) => bundle.default, String);
console.log(JSON.stringify(told));`,
      );
      told = JSON.parse(project.node(run)) as Record<string, unknown>;
    }, 60_000);

    test("without a warning", () => {
      expect(warned).toEqual([]);
    });

    test.each(entries)("%s is whole, has nothing but code, and runs", (entry) => {
      const files = readdirSync(join(project.folder, `out-${fileOf(entry)}`));
      expect(files.filter((file) => !file.endsWith(".js"))).toEqual([]);
      expect(told[entry]).toEqual([Object.keys(ENTRIES[entry as keyof typeof ENTRIES]).sort(), "optimal"]);
    });
  });

  describe("the second engine in a browser", () => {
    // V. Chvatal, Linear Programming (1983), the first example of chapter 2, from memory: 13 at (2, 0, 1), which is whole already.
    const source = `import {balance} from "mixwright";
import {loadHighs} from "mixwright/highs";
const highs = await loadHighs();
const {Status, ObjectiveValue, Columns} = highs.solve(\`Maximize
 obj: 5 a + 4 b + 3 c
Subject To
 one: 2 a + 3 b + c <= 5
 two: 4 a + b + 2 c <= 11
 three: 3 a + 4 b + 2 c <= 8
General
 a b c
End\`);
const amounts = ["a", "b", "c"].map((name) => Math.round(Columns[name].Primal * 1e6) / 1e6);
globalThis.told = [balance(${BRIEF}, {search: {highs}}).status, Status, ObjectiveValue, amounts];`;
    let browser: Browser;

    beforeAll(async () => {
      browser = await launchBrowser();
    });
    afterAll(() => browser?.close());

    /** What the bundle in a folder of the project tells a page that loads it. */
    async function toldBy(folder: string, script: string): Promise<unknown> {
      const types: Record<string, string> = {js: "text/javascript", wasm: "application/wasm"};
      const server = createServer(({url = "/"}, answer) => {
        const path = join(folder, url);
        const page =
          url === "/" ? `<!doctype html><script type="module" src="${script}"></script>` : undefined;
        if (page === undefined && !existsSync(path)) return answer.writeHead(404).end();
        const type = types[url.split(".").at(-1)!] ?? "text/html";
        return answer.writeHead(200, {"content-type": type}).end(page ?? readFileSync(path));
      });
      await new Promise<void>((resolve) => server.listen(0, "localhost", resolve));
      const page = await browser.newPage();
      try {
        await page.goto(`http://localhost:${(server.address() as AddressInfo).port}/`);
        await page.waitForFunction("globalThis.told !== undefined");
        return await page.evaluate("globalThis.told");
      } finally {
        await page.close();
        server.close();
      }
    }

    const ANSWER = ["optimal", "Optimal", 13, [2, 0, 1]];

    test("bundled by esbuild, with node:module external and the WebAssembly beside, as README.md says", async () => {
      const folder = join(project.folder, "out-highs");
      await esbuild({
        entryPoints: [project.write("highs.js", source)],
        bundle: true,
        splitting: true,
        format: "esm",
        platform: "browser",
        external: ["node:module"],
        outdir: folder,
        absWorkingDir: project.folder,
        logLevel: "silent",
      });
      cpSync(
        fileURLToPath(new URL("../../node_modules/highs/build/highs.wasm", import.meta.url)),
        join(folder, "highs.wasm"),
      );
      expect(await toldBy(folder, "/highs.js")).toEqual(ANSWER);
    }, 60_000);

    test("bundled by vite without settings", async () => {
      const folder = join(project.folder, "out-highs-vite");
      await build({
        root: project.folder,
        configFile: false,
        logLevel: "silent",
        build: {
          outDir: folder,
          target: "es2022",
          reportCompressedSize: false,
          rolldownOptions: {
            input: project.write("highs-vite.js", source),
            output: {entryFileNames: "highs-vite.js"},
          },
        },
      });
      expect(await toldBy(folder, "/highs-vite.js")).toEqual(ANSWER);
    }, 60_000);
  });

  test("pleases publint and are-the-types-wrong", async () => {
    const {messages} = await publint({
      pkgDir: join(project.folder, "node_modules/mixwright"),
      pack: false,
      strict: true,
    });
    expect(messages).toEqual([]);
    const found = await checkPackage(createPackageFromTarballData(readFileSync(project.tarball)));
    expect(found.types).toBeTruthy();
    // The package is ESM alone: what Node below 20.19 or TypeScript's oldest resolution would miss is not promised.
    const problems = "problems" in found ? found.problems : [];
    const promised = problems.filter(
      (problem) =>
        !("resolutionKind" in problem && ["node10", "node16-cjs"].includes(problem.resolutionKind)),
    );
    expect(promised).toEqual([]);
  });

  test("holds what it needs and nothing else", () => {
    const home = join(project.folder, "node_modules/mixwright");
    for (const file of [
      ...Object.keys(ENTRIES).flatMap((entry) => {
        const name = entry.split("/")[1] ?? "index";
        return [`dist/${name}.js`, `dist/${name}.d.ts`];
      }),
      "datasets/sources.csv",
      "datasets/schemas/recipe.schema.json",
    ])
      expect(existsSync(join(home, file)), file).toBe(true);
    // The licence asks to go along with every copy.
    expect(readFileSync(join(home, "README.md"), "utf8")).toContain("Permission is hereby granted");
    for (const file of [
      "lib",
      "tests",
      "notebooks",
      "dist/notebooks-site",
      "datasets/tools",
      "datasets/demo",
    ])
      expect(existsSync(join(home, file)), file).toBe(false);
  });
});
