import type { CrossSection, ManifoldToplevel } from 'manifold-3d'
import { planLayers } from '../../src/core/census/cut/layerPlan.ts'
import { habitsOf } from '../../src/core/model/habits.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import type { Recipe } from '../../src/core/model/settings.ts'
import type { Path } from './layTool.ts'
import { pathLength, zigzags } from './layTool.ts'
import { toSolid } from './solidCensus.ts'

/**
 * Plastic of a whole part by kind, mm³; gap lines are not among the wall lines here, nor strands
 * among the skins.
 */
export interface LaidByKind {
  wall: number
  gap: number
  skin: number
  strand: number
  infill: number
}

/**
 * The slow oracle of habits: cuts the layers with manifold-3d and lays them from exact polygons.
 * Wall lines are contours, in places too thin for two of them one line along the middle, told by
 * opening the region; skins and what they carry on are polygon offsets; strands what of a layer's
 * skin lies on a room of the layer below, or on nothing; infill every line and every join, moved on
 * from layer to layer so that no place is favoured. Square ends; pattern lines; the heights of the
 * cuts are ours.
 */
export function layByHabit(wasm: ManifoldToplevel, mesh: Mesh, recipe: Recipe): LaidByKind {
  const habits = habitsOf(recipe)
  const { lineMm, walls } = recipe
  const solid = toSolid(wasm, mesh)
  const plan = planLayers(solid.boundingBox().max[2], recipe.layerMm, recipe.firstLayerMm)
  const kept: CrossSection[] = [solid.slice(0)]
  const keep = (section: CrossSection): CrossSection => {
    kept.push(section)
    return section
  }
  const nothing = keep(wasm.CrossSection.square(0))
  const grow = (section: CrossSection, mm: number, join: 'Round' | 'Miter' = 'Round') =>
    mm === 0 ? section : keep(section.offset(mm, join, BLUNTEST, 64))
  // Layers of one shape share their polygons and what is worked out from them; the lines of infill
  // are laid in each.
  const shapes = new Map<string, CrossSection>()
  const slices = Array.from(plan.cutMm, (cut) => {
    const slice = keep(solid.slice(cut))
    const shape = JSON.stringify(slice.toPolygons())
    const known = shapes.get(shape) ?? slice
    shapes.set(shape, known)
    return known
  })
  const numbers = new Map([...new Set(slices)].map((slice, i) => [slice, i]))
  const divided = new Map<string, Divided>()
  const beyond = Math.min(walls * lineMm, lineMm / 2)
  const { topSkins, bottomSkins } = recipe
  const most = bottomSkins > 0 && habits.undersides === 'most'
  const skinsUnder = most ? Math.max(topSkins, bottomSkins) : bottomSkins
  const grownAll = (mm: number): CrossSection[] => {
    const grown = new Map([...numbers.keys()].map((slice) => [slice, grow(slice, mm)]))
    return slices.map((slice) => grown.get(slice)!)
  }
  const covers = grownAll(-Math.min(walls * lineMm, lineMm / 4))
  const wideCovers = grownAll(beyond)
  const laid: LaidByKind = { wall: 0, gap: 0, skin: 0, strand: 0, infill: 0 }
  let roomBelow = nothing
  let below: CrossSection | null = null
  // All of a layer but its strands and its infill.
  const divide = (i: number): Divided => {
    const slice = slices[i]!
    const around: number[] = []
    for (let j = i - skinsUnder; j <= i + topSkins; j++) {
      // Beneath the bed's own skins no layer is missed.
      if (j !== i && (j >= 0 || j >= i - bottomSkins)) around.push(j)
    }
    const shape = [slice, ...around.map((j) => slices[j])].map((one) => one && numbers.get(one))
    const key = String(shape)
    const known = divided.get(key)
    if (known) return known
    const inside = grow(slice, -walls * lineMm)
    const bare = (of: readonly CrossSection[]): CrossSection => {
      let left = inside
      for (const j of around) left = keep(left.intersect(of[j] ?? nothing))
      return keep(inside.subtract(left))
    }
    const held = keep(
      grow(bare(covers), habits.slopeBandMm).add(
        grow(bare(wideCovers), habits.holdMm > 0 ? habits.holdMm + beyond : 0),
      ),
    )
    const rooms = keep(inside.subtract(held))
      .decompose()
      .filter((piece) => keep(piece).area() >= habits.smallRoomMm2)
    const room = rooms.length > 0 ? keep(wasm.CrossSection.union(rooms)) : nothing
    const skin = keep(inside.subtract(room))
    const overlapMm = habits.overlapShare * lineMm
    // Ends of lines need as much room as a line is wide.
    const wide = grow(grow(inside, -lineMm / 2), lineMm / 2)
    const over = keep(grow(wide, overlapMm).subtract(inside))
    const overRoom = keep(over.intersect(grow(room, overlapMm))).area()
    const lines = layWalls(slice, walls, lineMm, habits, grow, keep)
    const fresh: Divided = { ...lines, rooms, room, skin, over: over.area(), overRoom }
    divided.set(key, fresh)
    return fresh
  }
  slices.forEach((slice, i) => {
    const heightMm = plan.heightMm[i]!
    const { wall, gap, rooms, room, skin, over, overRoom } = divide(i)
    const hung =
      below === null
        ? nothing
        : keep(keep(skin.subtract(below)).add(keep(skin.intersect(roomBelow))))
    const strand = hung.area()
    laid.wall += wall * heightMm
    laid.gap += gap * heightMm
    laid.skin += (skin.area() + over - overRoom - strand) * heightMm
    laid.strand += habits.strandShare * strand * heightMm
    const share = recipe.infillPct / 100
    if (share > 0 && room.area() > 0) {
      const spacing = lineMm / share
      const phase = (0.5 + i * GOLDEN) % 1
      for (const piece of rooms) {
        const rings = piece.toPolygons().map((ring): Path => ring.map(([x, y]) => [x, y] as const))
        const [paths] = zigzags(rings, (i % 2) as 0 | 1, spacing, lineMm, phase)
        const lines = joinedLength(paths, lineMm, habits.joinedShare) * lineMm
        laid.infill += Math.min(lines, piece.area()) * heightMm
      }
      laid.infill += share * overRoom * heightMm
    }
    roomBelow = room
    below = slice
  })
  for (const section of kept) section.delete()
  solid.delete()
  return laid
}

/** One layer's share of everything but strands and infill, mm² and polygons. */
interface Divided {
  readonly wall: number
  readonly gap: number
  readonly rooms: readonly CrossSection[]
  readonly room: CrossSection
  readonly skin: CrossSection
  /** What skins and rooms cover of the walls, and rooms of it. */
  readonly over: number
  readonly overRoom: number
}

/**
 * Longest mitre, in offsets: 54° and wider. Sharper corners end in a flat tip, as a disc rolled
 * into them would reach.
 */
const BLUNTEST = 2.2

const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * Lines from edge to edge, half a width more at either end than their middles go, and of the joins
 * the share that is laid.
 */
function joinedLength(paths: readonly Path[], lineMm: number, joinedShare: number): number {
  let mm = 0
  for (const path of paths) {
    for (let k = 0; k + 1 < path.length; k += 2) {
      mm += pathLength([path[k]!, path[k + 1]!]) + lineMm
      const next = path[k + 2]
      if (next) mm += Math.max(0, pathLength([path[k + 1]!, next]) - lineMm) * 2 * joinedShare
    }
  }
  return mm
}

type Grow = (section: CrossSection, mm: number, join?: 'Round' | 'Miter') => CrossSection

/** mm² of whole lines and of gap lines. */
function layWalls(
  slice: CrossSection,
  walls: number,
  lineMm: number,
  { oneLineBelow, gapLines }: ReturnType<typeof habitsOf>,
  grow: Grow,
  keep: (section: CrossSection) => CrossSection,
): { wall: number; gap: number } {
  const thinMm = (oneLineBelow * lineMm) / 2
  let wall = 0
  let gap = 0
  for (let pair = 0; pair < walls; pair++) {
    const region = grow(slice, -pair * lineMm)
    if (region.area() === 0) break
    // Where two lines fit: what a disc of that size reaches, its sharp corners given back.
    const thick = keep(grow(grow(region, -thinMm), thinMm, 'Miter').intersect(region))
    wall += perimeter(grow(thick, -lineMm / 2)) * lineMm
    // Opened once more, to lose the hairs that rounding leaves along the edge.
    const thin = grow(grow(keep(region.subtract(thick)), -HAIR_MM), HAIR_MM)
      .decompose()
      .filter((piece) => keep(piece).area() > LEAST_THIN_LINES2 * lineMm * lineMm)
      .filter((piece) => piece.area() > LEAST_MEAN_LINES * lineMm * stripLength(piece))
    for (const piece of thin) {
      if (pair === 0) wall += stripLength(piece) * lineMm
      else if (gapLines) gap += piece.area()
    }
  }
  return { wall, gap }
}

/**
 * Half of what is around a ring; of an open strip the long side of the rectangle of its area and
 * perimeter.
 */
function stripLength(piece: CrossSection): number {
  const half = perimeter(piece) / 2
  if (piece.numContour() > 1) return half
  return (half + Math.sqrt(Math.max(0, half * half - 4 * piece.area()))) / 2
}

const HAIR_MM = 0.004
const LEAST_MEAN_LINES = 0.05
/** Slivers that opening leaves at round places are no walls. */
const LEAST_THIN_LINES2 = 0.5

function perimeter(section: CrossSection): number {
  return section
    .toPolygons()
    .reduce(
      (sum, ring) => sum + pathLength([...ring, ring[0]!].map(([x, y]) => [x, y] as const)),
      0,
    )
}
