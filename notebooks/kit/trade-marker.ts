import {keep, recall} from "./address.ts";
import {changed, type Control, control} from "./control.ts";

/** Where the page looks: at a corner of the front (where it bends most, to begin with), or at a cell of the map. */
export type Mark =
  | {readonly at: "bend"}
  | {readonly at: "front"; readonly index: number}
  | {readonly at: "map"; readonly row: number; readonly column: number};

/** Where the page looks, and who wants to know at once. */
export interface Marker extends Control<Mark> {
  set(mark: Mark): void;
  /** Told of each move before the page is; one at a time. */
  onMove: ((mark: Mark) => void) | undefined;
}

/** The point that the page looks at; the bend of the front at first. */
export function newMarker(): Marker {
  let mark = read(recall("at")[0]);
  const element = document.createElement("div");
  const marker: Marker = Object.assign(
    control(element, () => mark),
    {
      onMove: undefined as Marker["onMove"],
      set(next: Mark) {
        if (written(next) === written(mark)) return;
        mark = next;
        keep("at", [written(mark)]);
        marker.onMove?.(mark);
        changed(element);
      },
    },
  );
  return marker;
}

function written(mark: Mark): string {
  if (mark.at === "bend") return "";
  return mark.at === "front" ? String(mark.index) : `${mark.row},${mark.column}`;
}

function read(text = ""): Mark {
  const [first, second] = text.split(",").map(Number);
  const whole = (value: number | undefined): value is number =>
    value !== undefined && Number.isInteger(value) && value >= 0 && value < 1000;
  if (whole(first) && whole(second)) return {at: "map", row: first, column: second};
  return text !== "" && whole(first) ? {at: "front", index: first} : {at: "bend"};
}
