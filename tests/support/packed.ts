import {execFileSync} from "node:child_process";
import {mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync} from "node:fs";
import {tmpdir} from "node:os";
import {dirname, join} from "node:path";
import {fileURLToPath} from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** An empty project that has only the packed library, as it would be published. */
export interface PackedProject {
  readonly folder: string;
  readonly tarball: string;
  /** Runs a file of the project with Node; its standard output. */
  readonly node: (...args: string[]) => string;
  readonly write: (name: string, text: string) => string;
  readonly remove: () => void;
}

/**
 * Packs the library and installs it into an empty project without a network: the tarball is unpacked as npm unpacks it, and
 * the dependencies that its package.json declares, and no others, are linked beside it.
 */
export function packedProject(): PackedProject {
  const folder = mkdtempSync(join(tmpdir(), "mixwright-project-"));
  const [{filename}] = JSON.parse(
    execFileSync("npm", ["pack", "--json", "--pack-destination", folder], {
      cwd: root,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
      shell: process.platform === "win32",
    }).replace(/^[^[]*/, ""),
  ) as [{filename: string}];
  const home = join(folder, "node_modules", "mixwright");
  mkdirSync(home, {recursive: true});
  execFileSync("tar", ["-xzf", filename, "--strip-components=1", "-C", home], {cwd: folder});
  const {dependencies} = JSON.parse(readFileSync(join(home, "package.json"), "utf8")) as {
    dependencies: Record<string, string>;
  };
  for (const name of Object.keys(dependencies)) {
    const link = join(folder, "node_modules", name);
    mkdirSync(dirname(link), {recursive: true});
    symlinkSync(join(root, "node_modules", name), link, "junction");
  }
  const write = (name: string, text: string) => {
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  };
  write("package.json", `{"name": "empty-project", "private": true, "type": "module"}`);
  return {
    folder,
    tarball: join(folder, filename),
    node: (...args) => execFileSync(process.execPath, args, {cwd: folder, encoding: "utf8"}),
    write,
    remove: () => rmSync(folder, {recursive: true, force: true}),
  };
}
