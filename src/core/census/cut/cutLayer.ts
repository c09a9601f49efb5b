import type { Contours } from './contours.ts'
import { greenArea, joinContours } from './contours.ts'
import { scanEdgeBand, type Edges } from '../rows/edgeBand.ts'
import { insetCurve } from '../rows/insetCurve.ts'
import { separatePieces } from '../areas/rooms.ts'
import { rowLengthMm } from '../rows/rowSet.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { subtractRows, uniteRows } from '../rows/rowAlgebra.ts'
import { bareEdges } from './bareEdges.ts'
import type { ScanGrid } from '../rows/scanGrid.ts'
import { scanOutline, scanPositive } from '../rows/scanGrid.ts'
import type { Outline } from './simplify.ts'
import { sameOutline, simplifyContours } from './simplify.ts'
import type { LayerCut } from './planeCutter.ts'

/**
 * Points this close to the line past them say nothing a nozzle could follow. It moves an outline by
 * at most this much; the area itself is taken before.
 */
const OUTLINE_TOLERANCE_MM = 0.002

/** One layer's shape, cut and scanned both ways; kept while its neighbours need it. */
export interface CutLayer {
  /** Equal for layers of the same shape. */
  readonly shape: number
  /** Without contours that lie within other bodies. */
  readonly outline: Outline
  /**
   * What of it bounds the solid: the outline itself where no body reaches into another; else parts
   * of it, there and back.
   */
  readonly edges: Edges
  /** Length of what of the outline lies within other bodies. mm */
  readonly hiddenMm: number
  /** A_i along u and along v. */
  readonly rows: readonly [RowSet, RowSet]
  /** |A_i|: by Green's theorem where next to nothing overlaps, else from the rows. mm² */
  readonly areaMm2: number
  /** True area ÷ scanned area, along u and along v. */
  readonly correction: readonly [number, number]
  readonly bridgedMm: number
  readonly lengthMm: number
  /** The solid lies to the left of its outline, and nowhere twice. */
  readonly upright: boolean
  /** How many pieces the layer is in. */
  readonly islands: number
  /** What lies deeper than some depth, worked out when first asked for. */
  readonly insets: Inset[]
}

export type Grids = readonly [ScanGrid, ScanGrid]

/**
 * Turns cuts into layers; a layer of the same shape as the one before shares everything with it.
 */
export function createLayerCutter(grids: Grids): (cut: LayerCut) => CutLayer {
  let previous: CutLayer | null = null
  let whole: Outline | null = null
  let shapes = 0
  return (cut) => {
    const contours = joinContours(cut)
    const outline = simplifyContours(contours, OUTLINE_TOLERANCE_MM)
    if (!previous || !whole || !sameOutline(whole, outline)) {
      whole = outline
      previous = scanLayer(outline, contours, grids, shapes++)
    }
    return previous
  }
}

/**
 * Rows are this true at worst; outlines that cross themselves by less need no other area than
 * Green's.
 */
const SCAN_ERROR = 1e-3

function scanLayer(outline: Outline, contours: Contours, grids: Grids, shape: number): CutLayer {
  const alongU = scanOutline(outline, grids[0])
  const alongV = scanOutline(outline, grids[1])
  const areaU = rowLengthMm(alongU.region) * grids[0].pitchMm
  const areaV = rowLengthMm(alongV.region) * grids[1].pitchMm
  const scanned = (areaU + areaV) / 2
  const green = outline.points.length > 0 ? Math.abs(contours.signedAreaMm2) : 0
  const simple = alongU.simple && alongV.simple
  const rows = [alongU.region, alongV.region] as const
  const bare = bareEdges(outline, [alongU, alongV], grids)
  const areaMm2 = simple || Math.abs(green - scanned) < SCAN_ERROR * green ? green : scanned
  return {
    shape,
    ...bare,
    rows,
    areaMm2,
    correction: [areaU > 0 ? areaMm2 / areaU : 1, areaV > 0 ? areaMm2 / areaV : 1],
    bridgedMm: contours.bridgedMm,
    lengthMm: contours.lengthMm,
    upright: simple && contours.signedAreaMm2 > 0,
    islands: simple
      ? countOuter(outline, contours.signedAreaMm2)
      : separatePieces(alongU.region).count,
    insets: [],
  }
}

/** Contours that run the way the whole does: of bodies inside out, those that run clockwise. */
function countOuter({ points, start }: Outline, signedAreaMm2: number): number {
  let count = 0
  for (let c = 0; c + 1 < start.length; c++) {
    if (greenArea(points, 2 * start[c]!, 2 * start[c + 1]!) * signedAreaMm2 > 0) count++
  }
  return count
}

/** A layer's rows inset, or grown where the depth is below 0. */
export interface Inset {
  readonly along: 0 | 1
  readonly depthMm: number
  readonly rows: RowSet
}

/**
 * What lies deeper than `depthMm` inside the outline, or, below 0, no further than that outside of
 * it.
 */
export function insetOf(layer: CutLayer, along: 0 | 1, depthMm: number, grids: Grids): RowSet {
  const own = layer.rows[along]
  if (depthMm === 0) return own
  const known = layer.insets.find((one) => one.along === along && one.depthMm === depthMm)
  if (known) return known.rows
  const rows = scanInset(layer, depthMm, grids[along])
  layer.insets.push({ along, depthMm, rows })
  return rows
}

function scanInset(layer: CutLayer, depthMm: number, grid: ScanGrid): RowSet {
  const { rows, outline, edges, upright } = layer
  if (upright) return scanPositive(insetCurve(outline, depthMm), grid)
  const own = rows[grid.along]
  const band = scanEdgeBand(edges, Math.abs(depthMm), grid)
  return depthMm > 0 ? subtractRows(own, band) : uniteRows(own, band)
}
