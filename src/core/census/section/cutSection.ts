import { habitsOf } from '../../model/habits.ts'
import { alongBox, boxOfMesh } from '../../mesh/boxOfMesh.ts'
import type { Bounds, Mesh } from '../../model/mesh.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import { layingOf, type Laying } from '../areas/laying.ts'
import { measureLayer } from '../areas/layerAreas.ts'
import { coveringLayers, skinReachOf } from '../areas/skinReach.ts'
import { createColumnRows } from '../areas/support.ts'
import { createLayerCutter, insetOf, type CutLayer, type Grids } from '../cut/cutLayer.ts'
import { planLayers, type LayerPlan } from '../cut/layerPlan.ts'
import { createPlaneCutter, type ScanFrame } from '../cut/planeCutter.ts'
import { roomBetween } from '../habits/holdSkins.ts'
import { intersectAll, subtractRows } from '../rows/rowAlgebra.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { planGrid, type ScanGrid } from '../rows/scanGrid.ts'
import { createSectionBoxes, type SectionBoxes } from './boxes.ts'
import type { PartSection, SectionAxis, SectionFrame } from './types.ts'

/** Left free between two wall lines, so that each is seen. Share of a line. */
const GAP_SHARE = 0.15
/**
 * Rows either side of an upright cut, a quarter line apart: what lies beside it decides what is
 * skin.
 */
const PITCH_LINES = 0.25

/**
 * Cuts a placed part (mm, lowest z at 0) by a plane and tells what lies in it, by the rules the
 * layers are counted by: wall lines, skins, rooms of infill, the rooms inside zones, and supports
 * where the settings have them.
 *
 * Upright cuts look at a strip as wide as skins reach, not at whole layers. So rooms that are laid
 * solid because they are small all the same count as rooms there; a level cut looks at the whole
 * layer, but not at what is above it, and so shows no supports.
 *
 * @param zones meshes placed with the part; later ones hold over earlier.
 * @param atMm where the plane lies on its axis. A level one shows the layer it is in.
 */
export function cutSection(
  mesh: Mesh,
  zones: readonly Mesh[],
  settings: GeometrySettings,
  axis: SectionAxis,
  atMm: number,
): PartSection {
  const box = boxOfMesh(mesh)
  const plan = planLayers(box.max[2], settings.layerMm, settings.firstLayerMm)
  const cutting: Cutting = { mesh, zones, settings, plan, boxes: createSectionBoxes() }
  const reachMm = alongBox(box, axis, 1) - alongBox(box, axis, 0)
  const layer = axis === 'z' ? cutLevel(cutting, box, atMm) : null
  if (axis !== 'z') cutUpright(cutting, box, axis, atMm)
  return {
    axis,
    atShare: reachMm > 0 ? (atMm - alongBox(box, axis, 0)) / reachMm : 0,
    reachMm,
    layer,
    layers: plan.count,
    frame: frameOf(box, axis, plan),
    regions: cutting.boxes.finish(),
  }
}

interface Cutting {
  readonly mesh: Mesh
  readonly zones: readonly Mesh[]
  readonly settings: GeometrySettings
  readonly plan: LayerPlan
  readonly boxes: SectionBoxes
}

function cutUpright(
  { mesh, zones, settings, plan, boxes }: Cutting,
  box: Bounds,
  axis: 'x' | 'y',
  atMm: number,
): void {
  // u runs along the plane, v across it.
  const frame: ScanFrame = axis === 'y' ? { cos: 1, sin: 0 } : { cos: 0, sin: 1 }
  const { grids, row } = stripGrids(settings, box, axis, atMm)
  const cutterOf = (one: Mesh) => {
    const slice = createPlaneCutter(one, plan, frame)
    const toLayer = createLayerCutter(grids)
    return (layer: number): CutLayer => toLayer(slice(layer))
  }
  const cut = cutterOf(mesh)
  const zoneCuts = zones.map(cutterOf)
  const lowerColumns = settings.supports ? createColumnRows(grids) : null
  const overhang = Math.tan((settings.supportAngleDeg * Math.PI) / 180)
  const laying = layingOf(settings, settings.layerMm, false)
  const layingFirst = layingOf(settings, settings.firstLayerMm, true)
  const reach = skinReachOf(settings)
  const below = Math.max(reach.under, 1)
  const kept = new Map<number, CutLayer>()
  const bottoms = bottomsOf(plan)
  for (let top = plan.count - 1 + below; top >= 0; top--) {
    if (top - below >= 0) kept.set(top - below, cut(top - below))
    kept.delete(top + reach.above + 1)
    const layer = kept.get(top)
    if (layer === undefined) continue
    const from = bottoms[top]!
    const to = from + plan.heightMm[top]!
    const own = top === 0 ? layingFirst : laying
    const inside = addWalls(layer, own, grids, (kind, rows) => boxes.add(kind, rows, row, from, to))
    const neighbours = coveringLayers(kept, top, reach)
    const { room } = roomBetween(layer, neighbours, inside, 0, own, grids)
    boxes.add('skin', subtractRows(inside, room), row, from, to)
    const zoneRows = zoneCuts.map((zone) => zone(top).rows[0])
    addRooms(room, zoneRows, boxes, (rows, put) => put(rows, row, from, to))
    const beneath = kept.get(top - 1)
    if (lowerColumns === null || beneath === undefined) continue
    const columns = lowerColumns(layer, beneath, plan.heightMm[top]! * overhang)
    boxes.add('support', columns, row, bottoms[top - 1]!, from)
  }
}

/** Returns the number of the layer, from 1. */
function cutLevel(
  { mesh, zones, settings, plan, boxes }: Cutting,
  { min: low, max: high }: Bounds,
  atMm: number,
): number {
  const bottoms = bottomsOf(plan)
  const level = Math.max(
    0,
    bottoms.findLastIndex((bottom) => bottom <= atMm),
  )
  const frame: ScanFrame = { cos: 1, sin: 0 }
  const grids: Grids = [
    planGrid(0, low[1], high[1], 0, settings.lineMm),
    planGrid(1, low[0], high[0], 0, settings.lineMm),
  ]
  const slice = createPlaneCutter(mesh, plan, frame)
  const toLayer = createLayerCutter(grids)
  const kept = new Map<number, CutLayer>()
  const reach = skinReachOf(settings)
  const highest = Math.min(plan.count - 1, level + reach.above)
  for (let at = highest; at >= Math.max(0, level - reach.under); at--) {
    kept.set(at, toLayer(slice(at)))
  }
  const layer = kept.get(level)
  if (layer === undefined) return level + 1
  const heightMm = level === 0 ? settings.firstLayerMm : settings.layerMm
  const laying = layingOf(settings, heightMm, level === 0)
  const { originMm, pitchMm, rows } = grids[0]
  const eachRow = (put: (row: number, from: number, to: number) => void) => {
    for (let row = rows - 1; row >= 0; row--) {
      put(row, originMm + row * pitchMm, originMm + (row + 1) * pitchMm)
    }
  }
  const inside = addWalls(layer, laying, grids, (kind, set) =>
    eachRow((row, from, to) => boxes.add(kind, set, row, from, to)),
  )
  const { room } = measureLayer(layer, coveringLayers(kept, level, reach), 0, laying, grids)
  const skin = subtractRows(inside, room)
  eachRow((row, from, to) => boxes.add('skin', skin, row, from, to))
  const zoneRows = zones.map(
    (zone) => createLayerCutter(grids)(createPlaneCutter(zone, plan, frame)(level)).rows[0],
  )
  addRooms(room, zoneRows, boxes, (set, put) => eachRow((...at) => put(set, ...at)))
  return level + 1
}

/** Adds the cut face and each wall line; returns what the walls enclose. */
function addWalls(
  layer: CutLayer,
  { walls, wallMm, lineMm, bareMm }: Laying,
  grids: Grids,
  add: (kind: 'cut' | 'wall', rows: RowSet) => void,
): RowSet {
  add('cut', layer.rows[0])
  for (let line = 0; line < walls; line++) {
    const outer = line === 0 ? 0 : bareMm + line * lineMm
    const inner = bareMm + (line + 1 - GAP_SHARE) * lineMm
    add('wall', subtractRows(insetOf(layer, 0, outer, grids), insetOf(layer, 0, inner, grids)))
  }
  return insetOf(layer, 0, wallMm, grids)
}

/** Adds the rooms of each zone, the last first, and what is left. */
function addRooms(
  room: RowSet,
  zoneRows: readonly RowSet[],
  boxes: SectionBoxes,
  each: (rows: RowSet, put: (rows: RowSet, row: number, from: number, to: number) => void) => void,
): void {
  let left = room
  for (let zone = zoneRows.length - 1; zone >= 0; zone--) {
    const own = zoneRows[zone]!
    each(intersectAll(left, [own]), (...at) => boxes.addZone(zone, ...at))
    left = subtractRows(left, own)
  }
  each(left, (...at) => boxes.add('room', ...at))
}

/**
 * Rows along the plane: one in it, and as many to both sides as skins are carried on. Rows across
 * it stand all along the part where supports need them, since a bridge may lie either way.
 */
function stripGrids(
  settings: GeometrySettings,
  { min: low, max: high }: Bounds,
  axis: 'x' | 'y',
  atMm: number,
): { readonly grids: Grids; readonly row: number } {
  const { lineMm, supports } = settings
  const { holdMm, slopeBandMm } = habitsOf(settings)
  const pitchMm = PITCH_LINES * lineMm
  const row = Math.ceil((Math.max(holdMm, slopeBandMm) + 2 * lineMm) / pitchMm)
  const v = axis === 'y' ? atMm : -atMm
  const along: ScanGrid = {
    along: 0,
    rows: 2 * row + 1,
    pitchMm,
    originMm: v - (row + 0.5) * pitchMm,
  }
  const k = axis === 'y' ? 0 : 1
  const across: ScanGrid = supports
    ? planGrid(1, low[k], high[k], 0, lineMm)
    : { along: 1, rows: 1, pitchMm: high[k] - low[k], originMm: low[k] }
  return { grids: [along, across], row }
}

/** Height of each layer's underside, mm. */
function bottomsOf({ heightMm }: LayerPlan): number[] {
  let at = 0
  return Array.from(heightMm, (height) => {
    at += height
    return at - height
  })
}

function frameOf(
  { min: low, max: high }: Bounds,
  axis: SectionAxis,
  { heightMm }: LayerPlan,
): SectionFrame {
  const k = axis === 'x' ? 1 : 0
  const top = heightMm.reduce((sum, height) => sum + height, 0)
  return axis === 'z'
    ? { left: low[0], right: high[0], bottom: low[1], top: high[1] }
    : { left: low[k], right: high[k], bottom: 0, top }
}
