import type { DrawnPlace } from '../../core/model/aircraft.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import type { Problem } from '../../core/model/problem.ts'

/**
 * A mesh file whose bytes are known: `hash` is their SHA-256, lower-case hex. The blob is read
 * inside the worker.
 */
export interface MeshSource {
  readonly hash: string
  readonly name: string
  readonly blob: Blob
  /** Loose bodies of it thinner than a line stay in. */
  readonly keepsHairs?: boolean
}

/** Volume and area alone, known long before the layers are counted. */
export interface Rough {
  readonly volumeMm3: number
  readonly areaMm2: number
}

/** First look at a file: what it holds, each mesh hashed and roughly measured. */
export interface OpenAsk {
  readonly kind: 'open'
  readonly name: string
  readonly blob: Blob
}

/** One mesh of an opened file; an archive gives several. */
export type OpenedFile =
  | {
      readonly ok: true
      readonly source: MeshSource
      /** The unit the file states; null where it has none. */
      readonly unit: LengthUnit | null
      /** Measured with one file unit taken as one millimetre. */
      readonly raw: Rough
    }
  | { readonly ok: false; readonly name: string; readonly problem: Problem }

export type OpenAnswer =
  | { readonly kind: 'meshes'; readonly files: readonly OpenedFile[] }
  /** The file is one of our own project files. */
  | { readonly kind: 'project' }
  /** The file holds the moves of a print head: it is read by `ToolpathAsk`. */
  | { readonly kind: 'toolpath' }

/** Makes new mesh files: one a kind of part on a plate, or one without stray scraps. */
export interface SplitAsk {
  readonly kind: 'split'
  readonly source: MeshSource
  readonly unit: LengthUnit
  readonly how: 'parts' | 'clean'
}

export interface SplitAnswer {
  readonly pieces: readonly SplitPiece[]
  /** Triangles that went into none of them. */
  readonly leftOut: number
}

export interface SplitPiece {
  readonly source: MeshSource
  /** Measured with one file unit taken as one millimetre. */
  readonly raw: Rough
  /** How many such parts there are, mirrored ones included. */
  readonly count: number
  readonly mirrored: number
  /** Where the file puts each of them; left out where it does not say. */
  readonly places?: readonly DrawnPlace[]
  /** What the file calls it; left out where it does not. */
  readonly name?: string
}

/** Packs files into a ZIP, in the order given. */
export interface PackAsk {
  readonly kind: 'pack'
  readonly entries: readonly PackEntry[]
}

export interface PackEntry {
  readonly path: string
  readonly content: Blob | string
}

export interface UnpackAsk {
  readonly kind: 'unpack'
  readonly blob: Blob
}

/**
 * One entry of a ZIP; `hash` is the SHA-256 of the unpacked bytes. A damaged entry is told, the
 * others go on.
 */
export type UnpackedEntry =
  | { readonly ok: true; readonly path: string; readonly blob: Blob; readonly hash: string }
  | { readonly ok: false; readonly path: string; readonly reason: string }

export interface UnpackAnswer {
  readonly entries: readonly UnpackedEntry[]
  /** The archive ends before its own table of contents. */
  readonly cutShort: boolean
}
