import type { Painted } from './paint.ts'
import type { ProjectedPiece, Projection } from './project.ts'
import { sharpEdges } from './sharpEdges.ts'

/** Loose visible stretches of one item: x, y of one end and the other, px; stride 4. */
export interface Inked {
  readonly outline: number[]
  readonly edges: number[]
}

/** A point this far behind what its neighbourhood shows still counts as seen, mm. */
const BEHIND_MM = 0.12
/** Step along an edge, samples. */
const STEP = 0.7
/** Shorter stretches are the noise of the depth buffer. px */
const LEAST_RUN_PX = 0.6

/** The visible stretches of every sharp edge and silhouette, by item. */
export function ink({ pieces, items }: Projection, painted: Painted): readonly Inked[] {
  const inked = items.map((): Inked => ({ outline: [], edges: [] }))
  for (const piece of pieces) {
    const own = inked[piece.item]
    if (own !== undefined) inkPiece(piece, painted, own)
  }
  return inked
}

function inkPiece(piece: ProjectedPiece, painted: Painted, into: Inked): void {
  const { mesh, x, y, depth } = piece
  const { from, to, left, right, crease } = sharpEdges(mesh)
  const facing = facings(piece)
  for (let e = 0; e < from.length; e++) {
    const one = facing[left[e]!]!
    const two = right[e]! < 0 ? -one : facing[right[e]!]!
    const isSilhouette = one * two <= 0
    if (crease[e] === 0 && !isSilhouette) continue
    // Of two faces neither of which is turned to the eye nothing shows that another edge does not
    // show too.
    if (right[e]! >= 0 && one <= 0 && two <= 0) continue
    const a = from[e]!
    const b = to[e]!
    const places = [x[a]!, y[a]!, depth[a]!, x[b]!, y[b]!, depth[b]!] as const
    inkEdge(places, isSilhouette, painted, piece.item, into)
  }
}

/**
 * 1 for triangles wound one way on the sheet, −1 for the other, 0 edge-on; outward meshes show
 * their 1s or their −1s.
 */
function facings({ mesh, x, y, mirrored }: ProjectedPiece): Int8Array {
  const { indices } = mesh
  const facing = new Int8Array(indices.length / 3)
  for (let t = 0; t < facing.length; t++) {
    const a = indices[3 * t]!
    const b = indices[3 * t + 1]!
    const c = indices[3 * t + 2]!
    const area = (x[b]! - x[a]!) * (y[c]! - y[a]!) - (y[b]! - y[a]!) * (x[c]! - x[a]!)
    // y runs down the sheet, so what faces the eye winds clockwise in numbers.
    facing[t] = Math.abs(area) < 1e-9 ? 0 : Math.sign(mirrored ? area : -area)
  }
  return facing
}

function inkEdge(
  [ax, ay, az, bx, by, bz]: readonly [number, number, number, number, number, number],
  isSilhouette: boolean,
  painted: Painted,
  item: number,
  into: Inked,
): void {
  const lengthPx = Math.hypot(bx - ax, by - ay)
  if (lengthPx === 0) return
  const steps = Math.max(1, Math.ceil((lengthPx * painted.samples) / STEP))
  let kind = HIDDEN
  let begin = 0
  for (let s = 0; s <= steps; s++) {
    // Between the ends of a step: what is seen there goes for all of it.
    const f = (s + 0.5) / steps
    const next =
      s === steps
        ? HIDDEN
        : lookAt(ax + f * (bx - ax), ay + f * (by - ay), az + f * (bz - az), painted, item)
    if (next === kind) continue
    if (kind !== HIDDEN) {
      const f0 = begin / steps
      const f1 = s / steps
      // A whole short edge is part of a curve; a short stretch of a longer one is noise.
      if (s - begin === steps || (f1 - f0) * lengthPx >= LEAST_RUN_PX) {
        // Where another item begins beside an edge of two faces that are seen, the line there is
        // that item's.
        const list = kind === OUTLINE && isSilhouette ? into.outline : into.edges
        list.push(
          ax + f0 * (bx - ax),
          ay + f0 * (by - ay),
          ax + f1 * (bx - ax),
          ay + f1 * (by - ay),
        )
      }
    }
    kind = next
    begin = s
  }
}

const HIDDEN = 0
const EDGE = 1
const OUTLINE = 2

/** What a point of an edge is on the sheet: hidden, inside its own item, or where that ends. */
function lookAt(
  xPx: number,
  yPx: number,
  depthMm: number,
  { width, height, samples, depth, label }: Painted,
  item: number,
): number {
  const column = Math.floor(xPx * samples)
  const row = Math.floor(yPx * samples)
  let seen = false
  let alone = true
  for (let r = row - 1; r <= row + 1; r++) {
    for (let c = column - 1; c <= column + 1; c++) {
      if (r < 0 || c < 0 || r >= height || c >= width) {
        alone = false
        continue
      }
      const at = r * width + c
      if (depthMm >= depth[at]! - BEHIND_MM) seen = true
      const here = label[at]!
      if (here === 0 || (here - 1) >> 2 !== item) alone = false
    }
  }
  if (!seen) return HIDDEN
  return alone ? EDGE : OUTLINE
}
