import type {Composition, Part} from "./parts.ts";

/** Parts that may not be sold as food everywhere, and where not. */
const UNAUTHORISED: Readonly<Partial<Record<Part, string>>> = {
  allulose: "in the European Union was no authorised food when last known (from memory)",
};

/** A sentence for each part of a mix that may not be sold as food everywhere. */
export function unauthorisedCautions(composition: Composition): string[] {
  return Object.entries(UNAUTHORISED).flatMap(([part, where]) =>
    composition[part as Part]
      ? [`Holds ${part}, which ${where}: ask your authority before you sell it.`]
      : [],
  );
}
