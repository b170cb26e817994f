/** So many zeros. Filled one by one, a list stays a plain list of numbers: of thousands of rows, others take seconds. */
export function zeros(length: number): number[] {
  const all: number[] = [];
  for (let k = 0; k < length; k++) all.push(0);
  return all;
}
