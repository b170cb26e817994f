import {type DrawerName, keeping} from "./database.ts";

/**
 * Changes values of a drawer, each by what its function makes of the present one; `undefined` takes it out.
 *
 * @returns takes the change back, but for values that were changed again since
 * @throws Error in words of the page where the browser refuses
 */
export async function changeUndoably(
  name: DrawerName,
  edits: ReadonlyMap<string, (present: unknown) => unknown>,
): Promise<() => Promise<void>> {
  const drawer = (await keeping()).drawer(name);
  const done: {readonly key: string; readonly before: unknown; readonly after: unknown}[] = [];
  for (const [key, edit] of edits)
    await drawer.change(key, (before) => {
      const after = edit(before);
      done.push({key, before, after});
      return after;
    });
  return async () => {
    for (const {key, before, after} of done.toReversed())
      await drawer.change(key, (present) =>
        JSON.stringify(present) === JSON.stringify(after) ? before : present,
      );
  };
}
