/** Name of a subject at a temperature, `ice at -18 °C` of the phrase `ice at`, and the way back. */
export function namedAt<K extends string>(kind: K, phrase: string) {
  return {
    name: ({at}: {readonly at: number}) => `${phrase} ${at} °C`,
    named(text: string): {readonly kind: K; readonly at: number} | undefined {
      const [at] = numbersIn(text, `${phrase} `, 1) ?? [];
      return at === undefined ? undefined : {kind, at};
    },
  };
}

/** Name of a subject between two temperatures, `heat shock from -18 to -14 °C`, and the way back. */
export function namedBetween<K extends string>(kind: K, phrase: string) {
  return {
    name: ({from, to}: {readonly from: number; readonly to: number}) => `${phrase} from ${from} to ${to} °C`,
    named(text: string): {readonly kind: K; readonly from: number; readonly to: number} | undefined {
      const [from, to] = numbersIn(text, `${phrase} from `, 2) ?? [];
      return from === undefined || to === undefined ? undefined : {kind, from, to};
    },
  };
}

/** Name of a subject without a temperature, and the way back. */
export function namedPlainly<K extends string>(kind: K) {
  return {
    name: () => kind,
    named: (text: string): {readonly kind: K} | undefined => (text === kind ? {kind} : undefined),
  };
}

/** The temperatures in a name, between its beginning and its unit; `undefined` for a name that begins otherwise. */
function numbersIn(text: string, beginning: string, count: number): number[] | undefined {
  if (!text.startsWith(beginning) || !text.endsWith(" °C")) return undefined;
  const numbers = text.slice(beginning.length, -" °C".length).split(" to ").map(Number);
  return numbers.length === count && numbers.every(Number.isFinite) ? numbers : undefined;
}
