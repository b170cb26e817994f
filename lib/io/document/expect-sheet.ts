import {expectShape} from "../../core/shape.ts";
import type {BatchSheet} from "../../kitchen/day/batch-sheet.ts";

/**
 * Refuses anything but a batch sheet.
 *
 * @throws InputError saying how one is made
 */
export function expectSheet(sheet: BatchSheet): void {
  expectShape(
    sheet,
    {
      title: "text",
      figures: "list",
      sections: "list",
      steps: "list",
      log: "list",
      allergens: "list",
      ingredientList: "list",
      cautions: "list",
      curve: "list",
      scoop: "object",
    },
    "sheet",
    "make it with batchSheet(product, to)",
  );
}
