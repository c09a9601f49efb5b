import type { Mesh } from '../model/mesh.ts'

/**
 * The same function, which works out once for each mesh what it tells of it and forgets it with the
 * mesh.
 */
export function onceAMesh<T>(find: (mesh: Mesh) => T): (mesh: Mesh) => T {
  const known = new WeakMap<Mesh, { readonly found: T }>()
  return (mesh) => {
    const before = known.get(mesh)
    if (before !== undefined) return before.found
    const found = find(mesh)
    known.set(mesh, { found })
    return found
  }
}
