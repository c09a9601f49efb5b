import type { Census } from '../model/census.ts'
import { hopCount } from './motion.ts'
import { createMemory } from './remember.ts'
import { betweenSpacings, valueBetween } from './spacings.ts'
import { HABIT_DEFAULTS } from '../model/habits.ts'
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
  /**
   * Of one that winds: how many more of its lines end on an edge that lies askew to x and y. An
   * edge of E mm that is seen S mm long along the lines, x and y by turns, has as many ends as one
   * of E + askewEnds × (S·π/2 − E) mm in any direction.
   */
  readonly askewEnds: number
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
 * - `askewEnds` by summing |sin| between every piece of path and an edge: honeycomb has 0.592 ends
 *   a mm of edge and mm of path a mm² along x or y, 0.660 at 45°; gyroid 0.657 and 0.610; lines in
 *   all directions 2/π.
 */
export const PATTERN_MODELS: Readonly<Record<Pattern, PatternModel>> = {
  lines: { directions: 1, pathFactor: 1, askewEnds: 0 },
  grid: { directions: 2, pathFactor: 1, askewEnds: 0 },
  triangles: { directions: 3, pathFactor: 1, askewEnds: 0 },
  honeycomb: { directions: 1, pathFactor: 4 / 3, askewEnds: 0.33 },
  gyroid: { directions: 1, pathFactor: 1.227, askewEnds: -0.15 },
}

/** What of a recipe decides how its infill is laid. */
export type InfillRecipe = Pick<Recipe, 'pattern' | 'infillPct' | 'lineMm' | 'habits'>

export function joinedShareOf({ habits }: Pick<Recipe, 'habits'>): number {
  return habits?.joinedShare ?? HABIT_DEFAULTS.joinedShare
}

/** Distance between neighbouring lines of one direction, mm; infinite at 0 %. */
export function infillSpacingMm(recipe: InfillRecipe): number {
  const { directions, pathFactor } = PATTERN_MODELS[recipe.pattern]
  return (directions * pathFactor * recipe.lineMm) / (recipe.infillPct / 100)
}

/** Whether its lines run in all directions, so that they end on every edge. */
const winds = ({ pattern }: Pick<Recipe, 'pattern'>): boolean =>
  PATTERN_MODELS[pattern].pathFactor > 1

/**
 * Two directions are joined each for itself, along the edges that its own lines end on; with three,
 * some end on every edge, and joins lead to whichever is next.
 */
const JOINED_APART = 2

/** Whether lines are joined along every edge of a room, to the nearest end. */
const endsAllRound = (recipe: Pick<Recipe, 'pattern'>): boolean =>
  winds(recipe) || PATTERN_MODELS[recipe.pattern].directions > JOINED_APART

/**
 * Way along the wall from the end of a line to that of the line it is joined to, mm. Of lines in
 * all directions alike, D mm of them a mm², 2·D/π end on every mm of edge (Cauchy and Crofton's
 * theorem of random lines); of three directions, over all edges together, as many.
 */
function joinedOverMm(recipe: InfillRecipe): number {
  if (!endsAllRound(recipe)) return infillSpacingMm(recipe)
  return (Math.PI * recipe.lineMm) / (2 * (recipe.infillPct / 100))
}

/**
 * Ends of lines that wind lie unevenly and the nearer are joined: so much of the mean gap, 0.77 to
 * 0.97 by the oracle of tests/support/layCurves.
 */
const SHORTER_GAPS = 0.9

/** Infill of some layers together. */
export interface InfillLaid {
  /** Path length of lines and turns together. */
  readonly pathMm: number
  /** The part of `pathMm` that lies in the turns. */
  readonly turnMm: number
  /** Lines laid, counting a line once from wall to wall. */
  readonly lines: number
  readonly infillMm3: number
  /** The part of it that lies in the turns. */
  readonly turnMm3: number
}

/** Of the rooms of a census, what no recipe changes. */
interface RoomSums {
  readonly rooms: number
  /** Zigzags at the spacings at which travels are known. */
  readonly zigzags: readonly number[]
}

const rememberRooms = createMemory<RoomSums>(1)
const NO_KEY: readonly unknown[] = []

/** Zigzags of one direction over all layers, with lines so far apart. */
export function zigzagCount(
  census: Census,
  recipe: Pick<Recipe, 'pattern' | 'infillPct'>,
  spacingMm: number,
): number {
  return windingZigzags(recipe, straightZigzags(census, spacingMm), roomCount(census))
}

/** The same of straight lines. */
function straightZigzags(census: Census, spacingMm: number): number {
  const { zigzags } = roomSums(census)
  return valueBetween(zigzags, betweenSpacings(census.moves.oneWay.infill, spacingMm))
}

/**
 * Of the zigzags beyond one a room, the share that is left where lines wind, ÷ √infill share.
 * Straight lines step to a neighbour, and where a room splits around something a new zigzag begins.
 * Lines that wind are joined to whichever end is nearest along the wall, so that many go on round
 * it, and the more the further apart ends lie, since none is sought beyond so many spacings. Shaped
 * on a damper cup, a lower deck and a plate with holes (0.25 left at 10 %, 0.4 at 20 %, 0.53 at
 * 30 %) and the boom of tests/core/figures/motionOracle (0.49, 0.67, 0.83); the other parts there
 * check it.
 */
const SPLITS_LEFT = 1.2

/** Of so many zigzags of straight lines in so many rooms, those that are left where lines wind. */
export function windingZigzags(
  recipe: Pick<Recipe, 'pattern' | 'infillPct'>,
  straight: number,
  rooms: number,
): number {
  return winds(recipe) ? goingRound(recipe, straight, rooms) : straight
}

/** Of so many zigzags, those that are left where lines are joined to the nearest end. */
function goingRound(
  { infillPct }: Pick<Recipe, 'infillPct'>,
  straight: number,
  rooms: number,
): number {
  if (straight <= rooms) return straight
  const left = Math.min(1, SPLITS_LEFT * Math.sqrt(Math.max(0, infillPct / 100)))
  return rooms + left * (straight - rooms)
}

/** Over all layers. */
export function roomCount(census: Census): number {
  return roomSums(census).rooms
}

function roomSums(census: Census): RoomSums {
  return rememberRooms(census, NO_KEY, () => ({
    rooms: census.layers.rooms.reduce((sum, some) => sum + some, 0),
    zigzags: census.moves.oneWay.infill.map(({ hops }) => hopCount(hops)),
  }))
}

/**
 * Infill path of the layers `from` (0 is the lowest) up to, not with, `to`.
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
 * direction; two directions follow as much each. Lines that wind, and three directions, end on
 * every edge, those along x or y too, and are joined along all of it: half of it at most, for there
 * is no more. Never more than the room holds; at 100 % the lines touch and there is nothing to join.
 *
 * Measured: what toolpaths of 10 % and 20 % follow of the boundary is 0.4 to 0.5 of it where they
 * join ends at all. Gyroid and honeycomb laid by the oracle of tests/support/layCurves on nine
 * parts at 20, 30 and 45 %: lines in number within 10 % of the theorem's, joined along 0.36 to 0.5
 * of the edge, where this gives 0.34 to 0.42. Three directions, on layers without skins of twelve of
 * ../shared/toolpaths: their joins follow 0.31 to 0.51 of the whole edge, whichever way its walls
 * lie. Ours less what was laid of infill, before as if each of two directions followed its own
 * walls:
 *
 * | spacing, rooms             | before, %              | all round, %      |
 * |----------------------------|------------------------|-------------------|
 * | 14 mm, 6 parts that shaped | −6, −2, +14, 0, +8, +10 | −6, −1, +5, 0, −9, −3 |
 * | 69 mm, one that shaped     | −10                    | +1                |
 * | 8 mm, one that shaped      | +6                     | −3                |
 * | 14 mm, 3 that checked      | +9, 0, −23             | +9, +10, −18      |
 * | 8 mm, one that checked     | +3                     | −2                |
 *
 * The three that checked and miss are rooms little wider than lines are apart, where the place of a
 * line decides, 39 mm³ in one of them. A bar askew whose lines were laid one by one, joined along
 * half of the edge, the most there is, came to 0.80 of ours before (tests/core/figures/
 * threeDirections).
 */
export function infillOn(
  census: Census,
  recipe: InfillRecipe,
  from: number,
  to: number,
): InfillLaid {
  const { heightMm, roomMm2, roomSeenMm, roomWalkMm, roomEdgeMm, rooms: roomsOn } = census.layers
  const rooms = roomCount(census)
  const { lineMm } = recipe
  const { directions, askewEnds } = PATTERN_MODELS[recipe.pattern]
  const share = Math.max(0, recipe.infillPct / 100)
  const between = joinedOverMm(recipe)
  const isWinding = winds(recipe)
  const allRound = endsAllRound(recipe)
  const straight = straightZigzags(census, between)
  const zigzags = allRound ? goingRound(recipe, straight, rooms) : straight
  const gapsMm = rooms > 0 ? (2 * between * zigzags) / rooms : 0
  const joined = isWinding ? SHORTER_GAPS : 1
  const followed =
    joinedShareOf(recipe) * (allRound ? 1 : directions) * Math.max(0, joined - lineMm / between)
  const walkMm = allRound ? roomEdgeMm : roomWalkMm
  let pathMm = 0
  let turnMm = 0
  let allEndsMm = 0
  let infillMm3 = 0
  let turnMm3 = 0
  for (let i = from; i < to; i++) {
    if (share <= 0 || roomMm2[i]! <= 0) continue
    const fullMm = roomMm2[i]! / lineMm
    const alongMm = Math.min(1, share) * fullMm
    const joinedMm = followed * Math.max(0, walkMm[i]! - roomsOn[i]! * gapsMm)
    const turnsMm = share >= 1 ? 0 : Math.min(joinedMm, fullMm - alongMm)
    const beadMm2 = lineMm * heightMm[i]!
    pathMm += alongMm + turnsMm
    turnMm += turnsMm
    const seenMm = roomSeenMm[i]!
    // Of lines that wind, in units of those that random ones end on a mm.
    allEndsMm += isWinding
      ? roomEdgeMm[i]! + askewEnds * ((Math.PI / 2) * seenMm - roomEdgeMm[i]!)
      : seenMm
    infillMm3 += (alongMm + turnsMm) * beadMm2
    turnMm3 += turnsMm * beadMm2
  }
  const apartMm = isWinding ? between : infillSpacingMm(recipe)
  const lines = (directions * allEndsMm) / (2 * apartMm)
  return { pathMm, turnMm, lines, infillMm3, turnMm3 }
}

/** Grams ask for what hours ask for, once for the pattern and once for solid lines. */
const remember = createMemory<InfillLaid>(4)

/** Infill of all layers together. */
export function infillLaid(census: Census, recipe: InfillRecipe): InfillLaid {
  const { pattern, infillPct, lineMm } = recipe
  return remember(census, [pattern, infillPct, lineMm, joinedShareOf(recipe)], () =>
    infillOn(census, recipe, 0, census.layers.count),
  )
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
