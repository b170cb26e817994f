import {openBeside} from "./room.ts";

/** Options of a fold. */
interface FoldOptions {
  /** Words that stand for several headings; the part's own, unless given. */
  readonly words?: string;
  /** Whether it stands open at first beside the brief, where there is room; on a phone it never does. Closed, unless given. */
  readonly wide?: "open" | "closed";
}

/**
 * A part of the page folded away under its own heading: what is not the answer itself. What stands in it may be drawn anew at any time; where
 * nothing is drawn there is nothing to open. On paper all of it stands open.
 */
export function folded(part: HTMLElement, {words, wide = "closed"}: FoldOptions = {}): HTMLDetailsElement {
  const fold = document.createElement("details");
  fold.className = "fold";
  fold.dataset.side = "answer";
  if (wide === "open") openBeside(fold);
  const summary = document.createElement("summary");
  fold.append(summary, part);
  summary.textContent = words ?? "";
  const lift = () => {
    const heading = part.querySelector("h3");
    if (!heading || words !== undefined) return;
    summary.textContent = heading.textContent;
    heading.remove();
  };
  lift();
  new MutationObserver(lift).observe(part, {childList: true});
  const printed = {opened: false};
  addEventListener("beforeprint", () => {
    printed.opened = !fold.open;
    fold.open = true;
  });
  addEventListener("afterprint", () => {
    if (printed.opened) fold.open = false;
  });
  return fold;
}
