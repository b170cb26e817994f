import type {Plugin} from "vite";

const PINNED = /<pre[^>]*><code class="language-[\w-]+">[\s\S]*?<\/code><\/pre>/g;

/** Gathers the code of the pinned cells in one folded section at the foot of the page: the cook reads first. */
export function codeBelow(): Plugin {
  return {
    name: "code-below",
    transformIndexHtml: {
      order: "pre",
      handler(page) {
        const code = page.match(PINNED);
        if (!code) return page;
        const section = `<details class="code"><summary>The code behind this page</summary>${code.join("")}</details>`;
        return page.replace(PINNED, "").replace("</main>", () => `${section}</main>`);
      },
    },
  };
}
