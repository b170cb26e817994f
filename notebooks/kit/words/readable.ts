import {unbroken} from "./numbers.ts";

/** The library's plain words as print wants them: true minus signs, and no line broken before a unit. */
export function readable(text: string): string {
  return unbroken(text.replaceAll(/(^|[ (])-(?=\d)/g, "$1−").replaceAll(" °Brix", "\u00a0°Brix"));
}
