/**
 * Widths of the letters from the blank to `~`, thousandths of the type size, of Helvetica and its bold, which Arial, Liberation Sans and
 * Arimo share. Source: Adobe Core 14 font metrics (AFM), from memory.
 */
const PLAIN =
  "278 278 355 556 556 889 667 191 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 278 278 584 584 584 556 " +
  "1015 667 667 722 722 667 611 778 722 278 500 667 556 833 722 778 667 778 722 667 611 722 667 944 667 667 611 278 278 278 469 556 " +
  "333 556 556 500 556 556 278 556 556 222 222 500 222 833 556 556 556 556 333 500 278 556 500 722 500 500 500 334 260 334 584";
const BOLD =
  "278 333 474 556 556 889 722 238 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 333 333 584 584 584 611 " +
  "975 722 722 722 722 667 611 778 722 278 556 722 611 833 722 778 667 778 722 667 611 722 667 944 667 667 611 333 278 333 584 556 " +
  "333 556 611 556 611 556 333 611 611 278 278 556 278 889 611 611 611 611 389 556 333 611 556 778 556 556 500 389 280 389 584";

const widths = (text: string) => text.split(" ").map(Number);
const [PLAIN_WIDTHS, BOLD_WIDTHS] = [widths(PLAIN), widths(BOLD)];

/** Height of its small letters without strokes, of the type size. */
export const X_HEIGHT = 0.519;

/** Typefaces in which the widths hold; where none is installed, lines are stretched or squeezed to the calculated width. */
export const MEASURED_FACE = 'Arial, "Liberation Sans", Arimo, Helvetica, sans-serif';

/** Width of a text at a type size of 1: an accented letter as wide as its letter, any other sign a full square. */
export function textWidth(text: string, bold: boolean): number {
  let total = 0;
  for (const sign of text.replace(/\u00a0/g, " ").normalize("NFD")) {
    if (/\p{M}/u.test(sign)) continue;
    const known = (bold ? BOLD_WIDTHS : PLAIN_WIDTHS)[sign.charCodeAt(0) - 32];
    total += known ?? (/[−–°·’‘]/.test(sign) ? 600 : /[“”…—]/.test(sign) ? 1000 : 1000);
  }
  return total / 1000;
}
