import type { Frame } from '../../core/model/frame.ts'

/** A mesh file that a part of the frame needs. */
export interface NeededMesh {
  readonly hash: string
  readonly fileName: string
  /** What it is the mesh of, for sentences. */
  readonly words: string
}

/**
 * Every mesh the frame needs: those of its parts, then those of their zones; one twice where two
 * need it.
 */
export function meshesNeededBy({ parts }: Pick<Frame, 'parts'>): readonly NeededMesh[] {
  const own = parts.map(({ meshHash: hash, fileName, name }): NeededMesh => ({
    hash,
    fileName,
    words: `“${name}”`,
  }))
  const zones = parts.flatMap(({ name, zones: ofPart }) =>
    ofPart.map(({ meshHash: hash, fileName }): NeededMesh => ({
      hash,
      fileName,
      words: `a zone of “${name}”`,
    })),
  )
  return [...own, ...zones]
}

/** Their hashes, each once. */
export function meshHashesOf(frame: Pick<Frame, 'parts'>): ReadonlySet<string> {
  return new Set(meshesNeededBy(frame).map(({ hash }) => hash))
}
