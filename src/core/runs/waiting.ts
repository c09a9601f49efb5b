import type { Joint } from '../model/joints.ts'

/** By part, how many other parts are joined to it: they cannot be tried before it is there. */
export function waitingFor(joints: readonly Joint[]): ReadonlyMap<string, number> {
  const partners = new Map<string, Set<string>>()
  const join = (id: string, other: string): void => {
    if (id === other) return
    partners.set(id, (partners.get(id) ?? new Set()).add(other))
  }
  for (const { a, b } of joints) {
    join(a.partId, b.partId)
    join(b.partId, a.partId)
  }
  return new Map([...partners].map(([id, others]) => [id, others.size]))
}
