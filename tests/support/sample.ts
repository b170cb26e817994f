/**
 * How many of so many random cases to take: all of them, but for the share that the environment variable `SAMPLE` names, at least
 * two. Mutation testing asks the same tests thousands of times.
 */
export function sample(count: number): number {
  return Math.min(count, Math.max(2, Math.ceil(count * Number(process.env["SAMPLE"] ?? 1))));
}
