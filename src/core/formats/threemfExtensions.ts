/**
 * Extensions of the 3MF Consortium that hold shape or hide it, by the word that names them in their
 * namespace (the date behind it changes with each edition). Names as the consortium's
 * specifications are titled; from memory, so they serve messages only.
 */
const NAMES: readonly (readonly [word: string, name: string])[] = [
  ['beamlattice', 'Beam Lattice Extension'],
  ['slice', 'Slice Extension'],
  ['volumetric', 'Volumetric Extension'],
  ['implicit', 'Implicit Extension'],
  ['displacement', 'Displacement Extension'],
  ['booleanoperations', 'Boolean Operations Extension'],
  ['securecontent', 'Secure Content Extension'],
  ['brep', 'Boundary Representation Extension'],
  ['boundaryrep', 'Boundary Representation Extension'],
  ['trianglesets', 'Triangle Sets Extension'],
  ['toolpath', 'Toolpath Extension'],
]

/**
 * "Beam Lattice Extension" for its namespace, of whatever edition; null where it names none that
 * holds shape.
 */
export function extensionName(namespace: string): string | null {
  const words = new Set(namespace.toLowerCase().split(/[/:#]+/))
  return NAMES.find(([word]) => words.has(word))?.[1] ?? null
}

/** For a message: the name, or the namespace where it is not known. */
export function extensionTitle(namespace: string): string {
  return extensionName(namespace) ?? `"${namespace}"`
}
