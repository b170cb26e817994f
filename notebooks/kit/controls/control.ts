/** A control of the page: an element with a value that tells by an `input` event when it changes. */
export type Control<T> = HTMLElement & {value: T};

/** Makes an element a control whose value is read by a function. */
export function control<T>(element: HTMLElement, read: () => T): Control<T> {
  return Object.defineProperty(element, "value", {get: read}) as Control<T>;
}

/** Tells the page that a control has changed by something other than the hand. */
export function changed(element: HTMLElement): void {
  element.dispatchEvent(new Event("input", {bubbles: true}));
}

/** The number in a box, or `undefined` while it is empty or no number. */
export function numberIn(box: HTMLInputElement): number | undefined {
  return Number.isFinite(box.valueAsNumber) ? box.valueAsNumber : undefined;
}
