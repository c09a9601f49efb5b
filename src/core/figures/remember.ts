import type { Census } from '../model/census.ts'

/** What was made of a census with a key: the same as last time, or made now. */
type Remember<T> = (census: Census, key: readonly unknown[], make: () => T) => T

/**
 * Remembers what was made of each census for the `most` last keys: a slider asks again and again
 * for the same part, and most of its hours stay. Keys are alike when all they list is identical.
 */
export function createMemory<T>(most: number): Remember<T> {
  const kept = new WeakMap<Census, { readonly key: readonly unknown[]; readonly made: T }[]>()
  return (census, key, make) => {
    let list = kept.get(census)
    if (list === undefined) kept.set(census, (list = []))
    for (const one of list) if (isSame(one.key, key)) return one.made
    const made = make()
    list.unshift({ key, made })
    if (list.length > most) list.pop()
    return made
  }
}

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false
  return a.length === b.length
}
