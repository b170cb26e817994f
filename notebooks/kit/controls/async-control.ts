import {changed, type Control, control} from "./control.ts";

/**
 * Something worked out from controls that takes a moment, as a control of its own: it tells when it is there. What was asked
 * for last wins, however long an earlier one takes.
 */
export async function awaited<T>(
  controls: readonly HTMLElement[],
  make: () => Promise<T>,
): Promise<Control<T>> {
  let value = await make();
  let asked = 0;
  const element = document.createElement("div");
  const ask = async () => {
    const mine = ++asked;
    // A text that is put in at once can tell of each of its lines: it is read when the last has come.
    await new Promise((last) => setTimeout(last));
    if (mine !== asked) return;
    const made = await make();
    if (mine !== asked) return;
    value = made;
    changed(element);
  };
  for (const one of controls) one.addEventListener("input", () => void ask());
  return control(element, () => value);
}
