import {keep, recall} from "../words/address.ts";
import {changed, type Control, control} from "../controls/control.ts";
import {type Mark, markFrom, markText} from "../words/address-format.ts";

/** Place that the page looks at, and who wants to know at once. */
export interface Marker extends Control<Mark> {
  set(mark: Mark): void;
  /** Told of each move before the page is; one at a time. */
  onMove: ((mark: Mark) => void) | undefined;
}

/** The point that the page looks at; the bend of the front at first. */
export function newMarker(): Marker {
  let mark = markFrom(recall("at")[0] ?? "");
  const element = document.createElement("div");
  const marker: Marker = Object.assign(
    control(element, () => mark),
    {
      onMove: undefined as Marker["onMove"],
      set(next: Mark) {
        if (markText(next) === markText(mark)) return;
        mark = next;
        keep("at", [markText(mark)]);
        marker.onMove?.(mark);
        changed(element);
      },
    },
  );
  return marker;
}
