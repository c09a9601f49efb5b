/** Names by what they are made of, one part a level. */
interface Names {
  id: string | null
  readonly more: Map<string, Names>
}

const known: Names = { id: null, more: new Map() }

/**
 * What an error is called: `kind:of`, or `kind:of/and`. The same string object every time, so that
 * it is hashed once and compared by where it lies: a slider asks for the same few names thousands
 * of times a second. Kept for good: as many as a session has parts, spools and printers.
 */
export function errorId(kind: string, of: string, and?: string): string {
  const two = below(below(known, kind), of)
  if (and === undefined) return (two.id ??= `${kind}:${of}`)
  return (below(two, and).id ??= `${kind}:${of}/${and}`)
}

function below({ more }: Names, part: string): Names {
  let names = more.get(part)
  if (names === undefined) more.set(part, (names = { id: null, more: new Map() }))
  return names
}
