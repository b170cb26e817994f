import {keep, recall} from "../words/address.ts";
import {changed, type Control, control} from "./control.ts";

/** A text that the page sets and the address keeps. */
export interface Remembered extends Control<string | undefined> {
  set(text: string | undefined): void;
}

/** A text of the page's own, by its name in the address. */
export function remembered(key: string): Remembered {
  let current = recall(key)[0];
  const element = document.createElement("div");
  return Object.assign(
    control(element, () => current),
    {
      set(text: string | undefined) {
        current = text;
        keep(key, text === undefined ? [] : [text]);
        changed(element);
      },
    },
  );
}
