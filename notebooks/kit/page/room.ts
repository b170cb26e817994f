/** Width from which the brief stands beside its answer, as page.css has it; on a phone it stands above. */
const WIDE = "(min-width: 1060px)";

/** Whether the brief stands beside its answer. */
export function besideAnswer(): boolean {
  return matchMedia(WIDE).matches;
}

/**
 * Has a fold open where the brief stands beside its answer, and closed above it: once a tablet is turned too, unless the cook has
 * opened or closed the fold by then.
 */
export function openBeside(fold: HTMLDetailsElement): void {
  let left = (fold.open = besideAnswer());
  let printing = false;
  // A sheet of paper has a width of its own.
  addEventListener("beforeprint", () => (printing = true));
  addEventListener("afterprint", () => (printing = false));
  matchMedia(WIDE).addEventListener("change", ({matches}) => {
    if (!printing && fold.open === left) left = fold.open = matches;
  });
}
