import {decimal} from "../../../lib/core/format.ts";
import {FIRMNESS_ERRORS, LEFT_OUT_ERROR} from "../../../lib/freezing/firmness-table.ts";
import {row} from "../page/row.ts";
import {sheet} from "../page/sheet.ts";

/** Errors of scoop temperatures, class by class: in the fit to all, and where the class was left out of it. */
export function firmnessClasses(): HTMLElement {
  return sheet({
    heading: "How far the scoop temperature is off, class by class",
    reading: `Root mean square, °C, against where practice serves each class. For classes of tubs that the fit had not seen it is ${decimal(LEFT_OUT_ERROR, 1)} °C; every scoop temperature is given or taken by that and more, the more the further a mix is from all of these.`,
    name: "Firmness by class",
    columns: ["", "mixes", "in the fit", "left out of it"],
    body: FIRMNESS_ERRORS.map(({kind, mixes, fitted, leftOut}) =>
      row(kind, [String(mixes), decimal(fitted, 1), decimal(leftOut, 1)]),
    ),
  });
}
