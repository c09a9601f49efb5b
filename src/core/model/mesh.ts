/**
 * One indexed triangle mesh, whatever file it came from. `positions`: x, y, z per vertex, stride 3,
 * in the file's own unit (a `PartScale` turns it into mm). `indices`: three vertex numbers per
 * triangle, stride 3, counter-clockwise seen from outside.
 */
export interface Mesh {
  readonly positions: Float32Array | Float64Array
  readonly indices: Uint32Array
}

export type LengthUnit = 'micron' | 'millimetre' | 'centimetre' | 'inch' | 'foot' | 'metre'

export type MeshFormat = 'stl-binary' | 'stl-ascii' | 'obj' | '3mf'

/** A named run of triangles inside a mesh: an STL solid, an OBJ group, a 3MF build item. */
export interface MeshPiece {
  readonly name: string
  /** First triangle of the piece. */
  readonly firstTriangle: number
  readonly triangleCount: number
}

/** What a reader hands on: vertices welded by exact position, nothing repaired. */
export interface ReadMesh {
  readonly format: MeshFormat
  readonly mesh: Mesh
  /** The unit the file states; null where the format has none (STL, OBJ). */
  readonly unit: LengthUnit | null
  /** At least one piece; together they cover every triangle in order. */
  readonly pieces: readonly MeshPiece[]
  /** What was odd but still readable. */
  readonly findings: readonly Finding[]
}

/**
 * What a finding does to the figures, heaviest last. `changes the grams`: they, or their range, are
 * off until it is settled. `cannot print`: the grams hold, the print would fail. `worth knowing`:
 * the grams hold, something about the part may not be as meant. `note`: nothing to do.
 */
export type Grade = 'note' | 'worth knowing' | 'cannot print' | 'changes the grams'

/**
 * Something a builder should know about a mesh, in plain words. `code` is stable; the words are
 * not.
 */
export interface Finding {
  readonly code: FindingCode
  readonly grade: Grade
  /** A few words for a row of the ledger: what it is, without what to do. */
  readonly short: string
  /** A whole sentence with the numbers in it and, where there is something to do, what to do. */
  readonly message: string
  /** How many edges, triangles, bodies … it concerns; absent where counting makes no sense. */
  readonly count?: number
  /** Where it is, or the plainest of several: a box in the part's own axes as drawn, mm. */
  readonly place?: Bounds
}

export type FindingCode =
  | 'open-edges'
  | 'non-manifold-edges'
  | 'degenerate-triangles'
  | 'duplicate-triangles'
  | 'inside-out'
  | 'mixed-facing'
  | 'several-bodies'
  | 'cavity'
  | 'unknown-nest'
  | 'not-millimetres'
  | 'unlikely-size'
  | 'stray-speck'
  | 'hair'
  | 'solid-header'
  | 'trailing-bytes'
  | 'short-count'
  | 'skipped-content'
  | 'mirrored-item'
  | 'off-standard'
  | 'doubtful-layers'
  | 'counted-coarsely'
  | 'thin-regions'
  | 'layer-tie'
  | 'tall-layer'
  | 'mostly-skin'

/** Measured once per mesh, before any recipe. Lengths in mm after the part's unit was applied. */
export interface MeshMeasure {
  readonly triangles: number
  readonly vertices: number
  /** Separate connected bodies (shared vertices). */
  readonly bodies: number
  /** Positive for every sound mesh, also one that is inside out (which is then a finding). */
  readonly volumeMm3: number
  readonly areaMm2: number
  readonly boundsMm: Bounds
  /** Every edge is shared by exactly two triangles that run it in opposite directions. */
  readonly watertight: boolean
  readonly findings: readonly Finding[]
}

export interface Bounds {
  readonly min: Vec3
  readonly max: Vec3
}

export type Vec3 = readonly [x: number, y: number, z: number]
