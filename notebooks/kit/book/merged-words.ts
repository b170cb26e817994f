import type {Merged} from "../keep/merge.ts";

/** Outcome of adding a file, in sentences. */
export function mergedWords({added, newer, older, beside, same, deleted}: Merged): string {
  const sentence = (names: readonly string[], one: string, many: string) =>
    names.length === 0
      ? []
      : [names.length === 1 ? `“${names[0]}” ${one}.` : `${names.length} recipes ${many}.`];
  const said = [
    ...sentence(added, "is new in your book", "are new in your book"),
    ...sentence(
      newer,
      "was newer in the file: what you had is among its earlier versions",
      "were newer in the file: what you had is among their earlier versions",
    ),
    ...sentence(
      older,
      "was older in the file: that text is among its earlier versions",
      "were older in the file: those texts are among their earlier versions",
    ),
    ...sentence(beside, "is kept beside yours of that name", "are kept beside yours of their names"),
    ...sentence(same, "was there already", "were there already"),
    ...sentence(
      deleted,
      "is among the deleted ones, where it can be brought back",
      "of them are among the deleted ones, where they can be brought back",
    ),
  ];
  return said.join(" ") || "There is no recipe in the file.";
}
