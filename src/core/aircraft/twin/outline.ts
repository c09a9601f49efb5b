import type { Mesh } from '../../model/mesh.ts'
import type { Contours } from '../../census/cut/contours.ts'
import { joinContours } from '../../census/cut/contours.ts'
import { planLayers } from '../../census/cut/layerPlan.ts'
import { rowLengthMm } from '../../census/rows/rowSet.ts'
import { planGrid, scanOutline } from '../../census/rows/scanGrid.ts'
import type { Outline } from '../../census/cut/simplify.ts'
import { simplifyContours } from '../../census/cut/simplify.ts'
import { createPlaneCutter } from '../../census/cut/planeCutter.ts'
import { leastRectangle } from './rectangle.ts'

/** One closed line to cut along. */
export interface CutContour {
  /**
   * x, y per point, stride 2, mm; it closes on its first point. Counter-clockwise outside,
   * clockwise round a hole.
   */
  readonly points: Float64Array
  readonly hole: boolean
  /** Inside it, holes not taken off. */
  readonly areaMm2: number
  readonly lengthMm: number
}

/** A part's outline as it would be cut from plate. */
export interface PlateOutline {
  readonly contours: readonly CutContour[]
  /** Height of the cut it was taken at. */
  readonly cutHeightMm: number
  /** Holes taken off; bodies that overlap counted once. */
  readonly areaMm2: number
  /** Round the outside and every hole. */
  readonly cutLengthMm: number
  readonly minMm: readonly [x: number, y: number]
  readonly maxMm: readonly [x: number, y: number]
  /** Smallest rectangle it fits in, turned as need be: longer side, shorter side. */
  readonly sheetMm: readonly [long: number, short: number]
  /** Direction of its longer side against x, 0 to 180. */
  readonly longDeg: number
  /** Bodies overlap in the cut, so its lines cross; unite them before cutting. */
  readonly crossing: boolean
}

/**
 * Points nearer than this to the line past them are left out: far below what a cutter can follow.
 */
const TOLERANCE_MM = 0.002

/** Cuts tried, evenly up the part: odd, so that one lies half-way. */
const CUTS = 15
/** The cut half-way up is taken unless another encloses this much more. */
const WORTH_LEAVING_MIDDLE = 1.01

/**
 * Outline of a placed mesh (mm, lowest z at 0, see `placeMesh`): the cut half-way up, or the
 * largest of fifteen cuts where that is larger by more than 1 %, as on an arm whose motor pad is
 * lower than its middle. One cut, not a shadow: a chamfer, a countersink or a boss above or below
 * it does not show. Null where no cut meets anything.
 */
export function plateOutline(mesh: Mesh): PlateOutline | null {
  const cut = fullestCut(mesh)
  if (cut === null) return null
  const outline = simplifyContours(cut.joined, TOLERANCE_MM)
  if (outline.points.length === 0) return null
  const all = splitContours(outline)
  const signed = all.reduce((sum, contour) => sum + contour.signedMm2, 0)
  // A mesh that is inside out runs every contour the other way.
  const contours = all.map(({ points, signedMm2, lengthMm }) =>
    signed < 0
      ? contourOf(reversed(points), -signedMm2, lengthMm)
      : contourOf(points, signedMm2, lengthMm),
  )
  const box = boundsOf(outline.points)
  const sheet = leastRectangle(outline.points)
  const merged = scanUnion(outline, box)
  return {
    contours,
    cutHeightMm: cut.heightMm,
    areaMm2: merged ?? Math.abs(signed),
    cutLengthMm: contours.reduce((sum, contour) => sum + contour.lengthMm, 0),
    minMm: box.min,
    maxMm: box.max,
    sheetMm: sheet.sidesMm,
    longDeg: sheet.longDeg,
    crossing: merged !== null,
  }
}

function fullestCut(mesh: Mesh): { readonly joined: Contours; readonly heightMm: number } | null {
  let heightMm = 0
  for (let i = 2; i < mesh.positions.length; i += 3) {
    heightMm = Math.max(heightMm, mesh.positions[i] ?? 0)
  }
  if (!(heightMm > 0)) return null
  const plan = planLayers(heightMm, heightMm / CUTS, heightMm / CUTS)
  const slice = createPlaneCutter(mesh, plan, { cos: 1, sin: 0 })
  const middle = Math.floor(plan.count / 2)
  let best: { readonly joined: Contours; readonly heightMm: number } | null = null
  let most = 0
  // The slicer works its way down and cannot go back.
  for (let layer = plan.count - 1; layer >= 0; layer--) {
    const joined = joinContours(slice(layer))
    const weight = layer === middle ? WORTH_LEAVING_MIDDLE : 1
    const worth = weight * Math.abs(joined.signedAreaMm2)
    if (worth > most) {
      most = worth
      best = { joined, heightMm: plan.cutMm[layer] ?? 0 }
    }
  }
  return best
}

function contourOf(points: Float64Array, signedMm2: number, lengthMm: number): CutContour {
  return { points, hole: signedMm2 < 0, areaMm2: Math.abs(signedMm2), lengthMm }
}

function splitContours({ points, start }: Outline) {
  return Array.from(start.subarray(0, -1), (first, c) => {
    const own = points.slice(2 * first, 2 * (start[c + 1] ?? first))
    let twice = 0
    let lengthMm = 0
    const count = own.length / 2
    const [x0, y0] = pointAt(own, 0)
    for (let i = 0; i < count; i++) {
      const [x, y] = pointAt(own, i)
      const [nextX, nextY] = pointAt(own, (i + 1) % count)
      twice += (x - x0) * (nextY - y0) - (nextX - x0) * (y - y0)
      lengthMm += Math.hypot(nextX - x, nextY - y)
    }
    return { points: own, signedMm2: twice / 2, lengthMm }
  })
}

/** Point `i` of x, y pairs. */
function pointAt(points: Float64Array, i: number): readonly [number, number] {
  return [points[2 * i] ?? 0, points[2 * i + 1] ?? 0]
}

function reversed(points: Float64Array): Float64Array {
  const count = points.length / 2
  const turned = new Float64Array(points.length)
  for (let i = 0; i < count; i++) turned.set(pointAt(points, count - 1 - i), 2 * i)
  return turned
}

function boundsOf(points: Float64Array) {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let i = 0; i < points.length / 2; i++) {
    const [x, y] = pointAt(points, i)
    minX = Math.min(minX, x)
    maxX = Math.max(maxX, x)
    minY = Math.min(minY, y)
    maxY = Math.max(maxY, y)
  }
  return { min: [minX, minY] as const, max: [maxX, maxY] as const }
}

/**
 * Rows for a union stand as close as for lines this wide: nothing is tilted here, and edges along
 * the rows may be half a pitch off.
 */
const UNION_LINE_MM = 0.08

/**
 * Area of the union, mm², where contours overlap; null where they do not and Green's theorem is
 * exact.
 */
function scanUnion(outline: Outline, box: ReturnType<typeof boundsOf>): number | null {
  const grid = planGrid(0, box.min[1], box.max[1], 0, UNION_LINE_MM)
  const { region, simple } = scanOutline(outline, grid)
  return simple ? null : rowLengthMm(region) * grid.pitchMm
}
