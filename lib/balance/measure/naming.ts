/** The name of what is written at a temperature, `ice at -18 °C` of the phrase `ice at`, and back. */
export function namedAt<K extends string>(kind: K, phrase: string) {
  return {
    name: ({at}: {readonly at: number}) => `${phrase} ${at} °C`,
    named(text: string): {readonly kind: K; readonly at: number} | undefined {
      const [at] = numbersIn(text, `${phrase} `, 1) ?? [];
      return at === undefined ? undefined : {kind, at};
    },
  };
}

/** The name of what is written between two temperatures, `heat shock from -18 to -14 °C`, and back. */
export function namedBetween<K extends string>(kind: K, phrase: string) {
  return {
    name: ({from, to}: {readonly from: number; readonly to: number}) => `${phrase} from ${from} to ${to} °C`,
    named(text: string): {readonly kind: K; readonly from: number; readonly to: number} | undefined {
      const [from, to] = numbersIn(text, `${phrase} from `, 2) ?? [];
      return from === undefined || to === undefined ? undefined : {kind, from, to};
    },
  };
}

/** The name of what needs no temperature, and back. */
export function namedPlainly<K extends string>(kind: K) {
  return {
    name: () => kind,
    named: (text: string): {readonly kind: K} | undefined => (text === kind ? {kind} : undefined),
  };
}

/** The temperatures between a beginning and the unit of a name; none where it is another's. */
function numbersIn(text: string, beginning: string, count: number): number[] | undefined {
  if (!text.startsWith(beginning) || !text.endsWith(" °C")) return undefined;
  const numbers = text.slice(beginning.length, -" °C".length).split(" to ").map(Number);
  return numbers.length === count && numbers.every(Number.isFinite) ? numbers : undefined;
}
