import { layingOf } from '../../census/areas/laying.ts'
import { measureLayer } from '../../census/areas/layerAreas.ts'
import { coveringLayers, skinReachOf } from '../../census/areas/skinReach.ts'
import { createLayerCutter, type CutLayer, type Grids } from '../../census/cut/cutLayer.ts'
import { planLayers } from '../../census/cut/layerPlan.ts'
import { createPlaneCutter, type ScanFrame } from '../../census/cut/planeCutter.ts'
import { intersectAll, subtractRows } from '../../census/rows/rowAlgebra.ts'
import type { RowSet } from '../../census/rows/rowSet.ts'
import type { ScanGrid } from '../../census/rows/scanGrid.ts'
import type { Mesh } from '../../model/mesh.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import { frameTurnDeg } from './frameTurn.ts'
import { planLines } from './planLines.ts'
import type { PartCells } from './types.ts'

/**
 * Cells of about `cellMm` with what the layers put into each: walls and skins, and rooms of infill,
 * by the rules the layers are counted by. Material and infill are none of it, so that they can be
 * changed without another walk.
 *
 * @param mesh placed (mm, lowest z at 0); zones with it, later ones holding over earlier.
 * @param onProgress share of the layers done, 0–1.
 */
export function fillCells(
  mesh: Mesh,
  zones: readonly Mesh[],
  settings: GeometrySettings,
  cellMm: number,
  onProgress?: (fraction: number) => void,
): PartCells {
  const turnDeg = frameTurnDeg(mesh)
  const turned = turnMesh(mesh, turnDeg)
  const plan = planLayers(topOf(mesh), settings.layerMm, settings.firstLayerMm)
  const linesMm = planLines(turned, plan, settings, cellMm)
  const [xs, ys, zs] = linesMm
  const grids: Grids = [fineGrid(0, ys), fineGrid(1, xs)]
  const frame: ScanFrame = { cos: 1, sin: 0 }
  const cutterOf = (one: Mesh) => {
    const slice = createPlaneCutter(one, plan, frame)
    const toLayer = createLayerCutter(grids)
    return (layer: number): CutLayer => toLayer(slice(layer))
  }
  const cut = cutterOf(turned)
  const zoneCuts = zones.map((zone) => cutterOf(turnMesh(zone, turnDeg)))
  const sheet = (xs.length - 1) * (ys.length - 1)
  const count = sheet * (zs.length - 1)
  const solid = new Float32Array(count)
  const rooms = Array.from({ length: zones.length + 1 }, () => new Float32Array(count))
  const gaps = new Uint8Array(count)
  const laying = layingOf(settings, settings.layerMm, false)
  const layingFirst = layingOf(settings, settings.firstLayerMm, true)
  const reach = skinReachOf(settings)
  const kept = new Map<number, CutLayer>()
  let known: Spread | null = null
  let topMm = plan.heightMm.reduce((sum, height) => sum + height, 0)
  for (let top = plan.count - 1 + reach.under; top >= 0; top--) {
    if (top - reach.under >= 0) kept.set(top - reach.under, cut(top - reach.under))
    kept.delete(top + reach.above + 1)
    const layer = kept.get(top)
    if (layer === undefined) continue
    const neighbours = coveringLayers(kept, top, reach)
    const zoneLayers = zoneCuts.map((zone) => zone(top))
    if (known === null || !isSame(known.from, [layer, ...neighbours, ...zoneLayers])) {
      const own = top === 0 ? layingFirst : laying
      const { room } = measureLayer(layer, neighbours, 0, own, grids)
      const rows = divideRoom(room, zoneLayers)
      const layerGaps = new Uint8Array(sheet)
      spread(layer.rows[0], grids[0], xs, ys, layerGaps)
      known = {
        from: [layer, ...neighbours, ...zoneLayers],
        solid: spread(subtractRows(layer.rows[0], room), grids[0], xs, ys, null),
        rooms: rows.map((one) => spread(one, grids[0], xs, ys, null)),
        gaps: layerGaps,
      }
    }
    const bottomMm = topMm - plan.heightMm[top]!
    addLayer(known, bottomMm, topMm, zs, { solid, rooms, gaps })
    topMm = bottomMm
    onProgress?.((plan.count - top) / plan.count)
  }
  let full = 0
  let gapped = 0
  for (let cell = 0; cell < count; cell++) {
    const any = rooms.reduce((sum, room) => sum + room[cell]!, solid[cell]!) > 0.05
    if (any) full++
    if (any && gaps[cell] === 1) gapped++
  }
  return { linesMm, turnDeg, solid, rooms, gaps: gapped, full }
}

/** Rows this near, or so many of them; some lie in every line of cells, however narrow. */
const FINEST_MM = 0.1
const MOST_ROWS = 2000

function fineGrid(along: 0 | 1, lines: Float64Array): ScanGrid {
  const [low, high] = [lines[0]!, lines.at(-1)!]
  const rows = Math.max(
    1,
    Math.ceil((high - low) / Math.max(FINEST_MM, (high - low) / MOST_ROWS) - 1e-6),
  )
  return { along, rows, pitchMm: (high - low) / rows, originMm: low }
}

/** One layer's share of each cell of a level. */
interface Spread {
  readonly from: readonly (CutLayer | null)[]
  readonly solid: Float32Array
  readonly rooms: readonly Float32Array[]
  readonly gaps: Uint8Array
}

const isSame = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a.length === b.length && a.every((value, i) => value === b[i])

/** Room outside all zones, then in each; later zones hold over earlier. */
function divideRoom(room: RowSet, zoneLayers: readonly CutLayer[]): RowSet[] {
  const parts: RowSet[] = []
  let left = room
  for (const zone of zoneLayers.toReversed()) {
    parts.unshift(intersectAll(left, [zone.rows[0]]))
    left = subtractRows(left, zone.rows[0])
  }
  return [left, ...parts]
}

/**
 * Rows as shares of the cells: a line of cells is the mean of the rows whose middles lie in it, so
 * that nothing leaks over a wall that lies on a grid line. Marks in `gaps` where two stretches of
 * one row come to lie in cells that touch.
 */
function spread(
  { start, spans }: RowSet,
  { rows, pitchMm, originMm }: ScanGrid,
  xs: Float64Array,
  ys: Float64Array,
  gaps: Uint8Array | null,
): Float32Array {
  const nx = xs.length - 1
  const into = new Float32Array(nx * (ys.length - 1))
  const rowsIn = new Float64Array(ys.length - 1)
  let y = 0
  for (let row = 0; row < rows; row++) {
    const middle = originMm + (row + 0.5) * pitchMm
    while (y + 2 < ys.length && ys[y + 1]! <= middle) y++
    rowsIn[y]!++
    let x = 0
    let before = -2
    for (let i = start[row]!; i < start[row + 1]!; i++) {
      const [from, to] = [spans[2 * i]!, spans[2 * i + 1]!]
      while (x + 1 < nx && xs[x + 1]! <= from) x++
      if (gaps !== null && x - before <= 1) gaps[x + nx * y] = 1
      for (let at = x; at < nx && xs[at]! < to; at++) {
        const length = Math.min(to, xs[at + 1]!) - Math.max(from, xs[at]!)
        if (length > 0) into[at + nx * y]! += length / (xs[at + 1]! - xs[at]!)
        before = at
      }
    }
  }
  for (let cell = 0; cell < into.length; cell++) {
    into[cell]! /= Math.max(1, rowsIn[Math.floor(cell / nx)]!)
  }
  return into
}

function addLayer(
  layer: Spread,
  bottomMm: number,
  topMm: number,
  zs: Float64Array,
  to: { solid: Float32Array; rooms: readonly Float32Array[]; gaps: Uint8Array },
): void {
  const sheet = layer.solid.length
  for (let z = 0; z + 1 < zs.length; z++) {
    const height = Math.min(topMm, zs[z + 1]!) - Math.max(bottomMm, zs[z]!)
    if (!(height > 1e-9)) continue
    const share = height / (zs[z + 1]! - zs[z]!)
    const base = z * sheet
    for (let i = 0; i < sheet; i++) {
      to.solid[base + i]! += share * layer.solid[i]!
      to.rooms.forEach((room, k) => (room[base + i]! += share * layer.rooms[k]![i]!))
      if (layer.gaps[i] === 1) to.gaps[base + i] = 1
    }
  }
}

function topOf({ positions, indices }: Mesh): number {
  let top = 0
  for (const vertex of indices) top = Math.max(top, positions[3 * vertex + 2]!)
  return top
}

/** Into a frame turned by `turnDeg` against x and y. */
function turnMesh(mesh: Mesh, turnDeg: number): Mesh {
  if (turnDeg === 0) return mesh
  const angle = (turnDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const positions = new Float64Array(mesh.positions.length)
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y] = [mesh.positions[i]!, mesh.positions[i + 1]!]
    positions[i] = x * cos + y * sin
    positions[i + 1] = y * cos - x * sin
    positions[i + 2] = mesh.positions[i + 2]!
  }
  return { positions, indices: mesh.indices }
}
