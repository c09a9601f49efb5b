import type { Census } from '../model/census.ts'
import { atSpacing, hopCount } from './motion.ts'
import { createMemory } from './remember.ts'
import { habitsOf } from '../model/habits.ts'
import type { LaidRecipe, Pattern, Recipe } from '../model/settings.ts'

/** What tells one infill pattern from another here. */
export interface PatternModel {
  /**
   * How many straight line directions every layer lays; one-direction patterns alternate along x
   * and along y by layer.
   */
  readonly directions: number
  /** Path length over the length of the straight line it winds along. */
  readonly pathFactor: number
}

/**
 * The geometry assumed for each pattern.
 *
 * - grid and triangles lay each of their directions on every layer, lines crossing, as much plastic
 *   as if they did not cross.
 * - honeycomb: regular cells of side a whose path runs along a flat side (a forward), then along a
 *   slanted one (a/2 forward): 4a of path for 3a of progress, hence 4/3. Neighbouring paths share
 *   the flat sides.
 * - gyroid: sin x cos y + sin y cos z + sin z cos x = 0, cut flat: winding lines along x at some
 *   heights, along y at others, as many as straight lines half a cell apart would be. Their length
 *   over the straight ones', taken over a whole cell of heights, is 1.227 (integrated numerically;
 *   the test does it again).
 */
export const PATTERN_MODELS: Readonly<Record<Pattern, PatternModel>> = {
  lines: { directions: 1, pathFactor: 1 },
  grid: { directions: 2, pathFactor: 1 },
  triangles: { directions: 3, pathFactor: 1 },
  honeycomb: { directions: 1, pathFactor: 4 / 3 },
  gyroid: { directions: 1, pathFactor: 1.227 },
}

/** Distance between neighbouring lines of one direction, mm; infinite at 0 %. */
export function infillSpacingMm(recipe: Recipe): number {
  const { directions, pathFactor } = PATTERN_MODELS[recipe.pattern]
  return (directions * pathFactor * recipe.lineMm) / (recipe.infillPct / 100)
}

/** Two directions are joined each for itself; with three, the ends of others lie between and joins lead to them. */
const JOINED_APART = 2

/** Way along the wall from the end of a line to that of the line it is joined to, mm. */
function joinedOverMm(recipe: Recipe): number {
  const { directions } = PATTERN_MODELS[recipe.pattern]
  const spacing = infillSpacingMm(recipe)
  return directions > JOINED_APART ? spacing / directions : spacing
}

/** Infill of one layer. */
export interface InfillLayer {
  /** Path length of lines and turns together. */
  readonly pathMm: number
  /** The part of `pathMm` that lies in the turns. */
  readonly turnMm: number
  /** Lines laid, counting a line once from wall to wall. */
  readonly lines: number
}

const EMPTY: InfillLayer = { pathMm: 0, turnMm: 0, lines: 0 }

/** Infill of all layers together. */
export interface InfillLaid extends InfillLayer {
  readonly infillMm3: number
  /** The part of it that lies in the turns. */
  readonly turnMm3: number
}

/**
 * Infill path of each layer.
 *
 * With n directions, path factor k, line width w and infill share φ, neighbouring lines are s =
 * n·k·w/φ apart, so that the lines alone cover φ of the room. Joined end to end, the path follows
 * the wall from each line to the next. Of the boundary that lines end on, a zigzag follows every
 * second gap, half; a printer's habit is how much of it its paths follow, `joinedShare`, from none
 * to that half. A zigzag's first line starts and its last one ends free, which takes one gap off:
 * it follows joinedShare × (walk − 2·zigzags·gap). A room has one zigzag, or more where it splits
 * around something or the next line's end lies too far along the wall; the census counts them over
 * all layers. A gap runs from centre line to centre line, and half a line width at either end is
 * already covered by the lines themselves, so only (gap − w)/gap of it is new plastic. The census
 * measures along x on even layers and along y on odd ones, so over the layers one scan stands for a
 * direction; two directions follow as much each, and three no more than two, for there is no more
 * boundary. Never more than the room holds; at 100 % the lines touch and there is nothing to join.
 *
 * Measured: what toolpaths of 10 % and 20 % follow of the boundary is 0.4 to 0.5 of it where they
 * join ends at all. With three directions at 10 % in rooms of 10 mm, lines that are joined only
 * within their direction came to 0.84 of the sparse plastic laid, joins to the nearest end to 1.10,
 * with rooms 10 % too large.
 */
export function infillOf(census: Census, recipe: Recipe): (i: number) => InfillLayer {
  const { roomMm2, roomSeenMm, roomWalkMm, rooms } = census.layers
  const { lineMm } = recipe
  const { directions } = PATTERN_MODELS[recipe.pattern]
  const { joinedShare } = habitsOf(recipe)
  const share = recipe.infillPct / 100
  const spacing = infillSpacingMm(recipe)
  const between = joinedOverMm(recipe)
  const zigzags = atSpacing(census.moves.oneWay.infill, between, ({ hops }) => hopCount(hops))
  const roomCount = rooms.reduce((sum, some) => sum + some, 0)
  const gapsMm = roomCount > 0 ? (2 * between * zigzags) / roomCount : 0
  const followed = joinedShare * Math.min(2, directions) * Math.max(0, 1 - lineMm / between)
  return (i) => {
    const room = roomMm2[i]!
    if (share <= 0 || room <= 0) return EMPTY
    const fullMm = room / lineMm
    const alongMm = Math.min(1, share) * fullMm
    const joined = followed * Math.max(0, roomWalkMm[i]! - rooms[i]! * gapsMm)
    const turnMm = share >= 1 ? 0 : Math.min(joined, fullMm - alongMm)
    const lines = (directions * roomSeenMm[i]!) / (2 * spacing)
    return { pathMm: alongMm + turnMm, turnMm, lines }
  }
}

/** Grams ask for what hours ask for, once for the pattern and once for solid lines. */
const remember = createMemory<InfillLaid>(4)

/** Infill of all layers together. */
export function infillLaid(census: Census, recipe: Recipe): InfillLaid {
  const { pattern, infillPct, lineMm } = recipe
  return remember(census, [pattern, infillPct, lineMm, habitsOf(recipe).joinedShare], () => {
    const { count, heightMm } = census.layers
    const layerInfill = infillOf(census, recipe)
    const laid = { pathMm: 0, turnMm: 0, lines: 0, infillMm3: 0, turnMm3: 0 }
    for (let i = 0; i < count; i++) {
      const { pathMm, turnMm, lines } = layerInfill(i)
      const beadMm2 = lineMm * heightMm[i]!
      laid.pathMm += pathMm
      laid.turnMm += turnMm
      laid.lines += lines
      laid.infillMm3 += pathMm * beadMm2
      laid.turnMm3 += turnMm * beadMm2
    }
    return laid
  })
}

/** Infill rooms of a part that share one infill, with the recipe that holds in them. */
export interface Rooms {
  readonly census: Census
  readonly recipe: Recipe
}

/** The rooms outside of a part's zones, then those of each zone that holds any. */
export function roomsOf(census: Census, recipe: LaidRecipe): readonly Rooms[] {
  const { zonePcts } = recipe
  const inZones = census.zones.flatMap((zone, i): Rooms[] => {
    if (zone === null) return []
    return [{ census: zone, recipe: { ...recipe, infillPct: zonePcts?.[i] ?? recipe.infillPct } }]
  })
  return [{ census, recipe }, ...inZones]
}
