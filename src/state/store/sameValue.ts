/**
 * Whether two plain values (JSON) say the same, in whatever order their keys stand; a key that is
 * undefined is missing.
 */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b) || (a === 0 && b === 0)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) || Array.isArray(b)) {
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((each, i) => sameValue(each, b[i]))
    )
  }
  const [left, right] = [a, b] as readonly Readonly<Record<string, unknown>>[]
  const keys = new Set([...Object.keys(a), ...Object.keys(b)])
  return [...keys].every((key) => sameValue(left?.[key], right?.[key]))
}
