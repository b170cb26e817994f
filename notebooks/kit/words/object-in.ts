/** Properties of a value by name, whoever wrote it: none where it is no object. */
export function objectIn(value: unknown): Record<string, unknown> {
  return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
}
