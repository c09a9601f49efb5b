/** A map that keeps the `limit` entries used last. */
export interface Latest<V> {
  get(key: string): V | undefined
  set(key: string, value: V): void
}

export function createLatest<V>(limit: number): Latest<V> {
  const entries = new Map<string, V>()
  return {
    get(key) {
      const value = entries.get(key)
      if (value === undefined) return undefined
      entries.delete(key)
      entries.set(key, value)
      return value
    },
    set(key, value) {
      entries.delete(key)
      entries.set(key, value)
      if (entries.size <= limit) return
      const [oldest] = entries.keys()
      if (oldest !== undefined) entries.delete(oldest)
    },
  }
}
