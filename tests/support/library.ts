import * as explore from "../../lib/explore.ts";
import * as files from "../../lib/files.ts";
import * as freezing from "../../lib/freezing.ts";
import * as highs from "../../lib/highs.ts";
import * as main from "../../lib/index.ts";
import * as kitchen from "../../lib/kitchen.ts";
import * as label from "../../lib/label.ts";
import * as lp from "../../lib/lp.ts";
import * as substitute from "../../lib/substitute.ts";

/** What each entry of the package exports, by the name under which it is imported. */
export const ENTRIES = {
  mixwright: main,
  "mixwright/explore": explore,
  "mixwright/substitute": substitute,
  "mixwright/freezing": freezing,
  "mixwright/kitchen": kitchen,
  "mixwright/label": label,
  "mixwright/files": files,
  "mixwright/lp": lp,
  "mixwright/highs": highs,
} as const;

/** Every public value of the library at once, as no user needs it. */
export const library = {
  ...main,
  ...explore,
  ...substitute,
  ...freezing,
  ...kitchen,
  ...label,
  ...files,
  ...lp,
  ...highs,
};
