import {createHash} from "node:crypto";
import {basename} from "node:path";

/** The bundler's knowledge of a module. */
interface ModuleInfo {
  readonly importers: readonly string[];
  readonly dynamicImporters: readonly string[];
}

interface Bundle {
  getModuleInfo(id: string): ModuleInfo | null;
}

const isPage = (id: string) => /\.html(?:$|\?)/.test(id);

/** Pages that load a module as they open. The cells of a page import dynamically but at once; other dynamic imports wait for a need. */
function pagesOf(id: string, bundle: Bundle): string[] {
  const pages = new Set<string>();
  const seen = new Set([id]);
  for (const at of seen) {
    const info = bundle.getModuleInfo(at);
    if (!info) continue;
    if (isPage(at)) pages.add(basename(at.split("?")[0]!, ".html"));
    for (const importer of [...info.importers, ...info.dynamicImporters.filter(isPage)]) seen.add(importer);
  }
  return [...pages].sort();
}

/** Name of the chunk that a module goes into: none of its own for a page and for what waits for a need. */
function chunkOf(id: string, bundle: Bundle): string | null {
  if (isPage(id)) return null;
  const pages = pagesOf(id, bundle);
  if (pages.length <= 1) return pages[0] ?? null;
  return `${pages.length}-pages-${createHash("sha256").update(pages.join()).digest("hex").slice(0, 6)}`;
}

/**
 * Modules that the same pages load are one chunk: a page asks for seven to fifty files, not for up to a hundred and forty, and for nothing
 * that it does not need. A module imports only such as its pages load too, so that the chunks import each other without circles.
 */
export const BY_PAGES = {name: chunkOf, debugName: "by pages", includeDependenciesRecursively: false};
