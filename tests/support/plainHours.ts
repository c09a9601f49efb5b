import { moreOf } from '../../src/core/data/printerMore.ts'
import { paceOf } from '../../src/core/figures/curves.ts'
import { meltSpeedMmS } from '../../src/core/figures/flow.ts'
import {
  infillOn,
  infillSpacingMm,
  PATTERN_MODELS,
  roomsOf,
} from '../../src/core/figures/infill.ts'
import { moveTime } from '../../src/core/figures/kinematics.ts'
import { lineSeconds } from '../../src/core/figures/lineHours.ts'
import type { Motion } from '../../src/core/figures/motion.ts'
import { cornerSpeedMmS, travelTime } from '../../src/core/figures/motion.ts'
import type { Census } from '../../src/core/model/census.ts'
import type { Material, Printer } from '../../src/core/model/figures.ts'
import type { TravelTable } from '../../src/core/model/moves.ts'
import type { LaidRecipe, Recipe } from '../../src/core/model/settings.ts'

/**
 * Seconds of a print, start-up included, the slow obvious way: nothing is kept from one call to the
 * next, every line of a table is driven at every share of infill, every layer is looked at by
 * itself.
 */
export function plainSeconds(
  census: Census,
  recipe: LaidRecipe,
  material: Material,
  printer: Printer,
): number {
  const { floorMmS } = moreOf(printer)
  const rooms = roomsOf(census, recipe).map((one) => ({
    ...one,
    lines: lineSeconds(structuredClone(one.census), one.recipe, material, printer),
    usual: infillAt(one.census, one.recipe, material, printer, false),
    first: infillAt(one.census, one.recipe, material, printer, true),
  }))
  let timeS = printer.startS
  for (let i = 0; i < census.layers.count; i++) {
    let laidS = 0
    let laidMm = 0
    let restS = printer.layerChangeS
    for (const { census: own, recipe: laid, lines, usual, first } of rooms) {
      const { roomMm, roomLines } = own.moves.byLayer
      const at = i === 0 && roomMm[0]! > 0 ? first : usual
      const losing = PATTERN_MODELS[laid.pattern].pathFactor > 1 ? roomMm : roomLines
      const alongS = at.cruiseS * share(roomMm, i)
      laidS += lines.seconds[i]! + alongS + at.turnS * share(losing, i)
      laidMm += lines.lengthMm[i]! + alongS * at.speedMmS
      for (const { seconds, over } of usual.travels) {
        restS += seconds * (sum(over) > 0 ? share(over, i) : 1 / census.layers.count)
      }
    }
    timeS += Math.max(laidS + restS, Math.min(printer.leastLayerS, laidMm / floorMmS + restS))
  }
  return timeS
}

interface Taken {
  readonly cruiseS: number
  readonly turnS: number
  readonly travels: readonly { readonly seconds: number; readonly over: ArrayLike<number> }[]
}

function infillAt(
  census: Census,
  recipe: Recipe,
  material: Material,
  printer: Printer,
  onFirst: boolean,
): Taken & { readonly speedMmS: number } {
  const { infillMmS, firstLayerMmS, flowMm3S, accelMmS2, cornerMmS } = printer
  const wantedMmS = onFirst ? Math.min(infillMmS, firstLayerMmS) : infillMmS
  const heightMm = onFirst ? census.layers.heightMm[0]! : recipe.layerMm
  const speedMmS = meltSpeedMmS(wantedMmS, flowMm3S, recipe.lineMm, heightMm, material.flow)
  const motion = { speedMmS, accelMmS2, cornerMmS }
  return { ...held(census, recipe, motion, printer), speedMmS }
}

/** Never shorter than sparser infill at the census' own spacings. */
function held(census: Census, recipe: Recipe, motion: Motion, printer: Printer): Taken {
  if (!(recipe.infillPct > 0)) return drawn(census, recipe, motion, printer)
  const at = (infillPct: number): Taken => capped(census, { ...recipe, infillPct }, motion, printer)
  const { directions, pathFactor } = PATTERN_MODELS[recipe.pattern]
  const spacing = infillSpacingMm(recipe)
  const sparser = census.moves.oneWay.infill
    .filter(({ spacingMm }) => spacingMm > spacing)
    .map(({ spacingMm }) => total(at((100 * directions * pathFactor * recipe.lineMm) / spacingMm)))
  const bare = total(drawn(census, { ...recipe, infillPct: 0 }, motion, printer))
  const here = at(recipe.infillPct)
  const least = Math.max(bare, ...sparser)
  return total(here) > 0 && total(here) < least ? times(here, least / total(here)) : here
}

/** Above half full on its way to solid lines; never longer than those. */
function capped(census: Census, recipe: Recipe, motion: Motion, printer: Printer): Taken {
  const lines = { ...recipe, pattern: 'lines' } as const
  const solid = Math.max(0, (recipe.infillPct - 50) / 50)
  const own = drawn(census, recipe, motion, printer)
  const other = drawn(census, lines, motion, printer)
  const [most, rest] = [times(own, 1 - solid), times(other, solid)]
  const mixed =
    recipe.pattern === 'lines' || solid === 0
      ? own
      : {
          cruiseS: most.cruiseS + rest.cruiseS,
          turnS: most.turnS + rest.turnS,
          travels: [...most.travels, ...rest.travels],
        }
  const solidS = total(drawn(census, { ...lines, infillPct: 100 }, motion, printer))
  return total(mixed) > solidS ? times(mixed, solidS / total(mixed)) : mixed
}

function drawn(census: Census, recipe: Recipe, motion: Motion, printer: Printer): Taken {
  return { ...linesTime(census, recipe, motion), travels: travels(census, recipe, printer) }
}

/** Line by line of the table. */
function linesTime(
  census: Census,
  recipe: Recipe,
  motion: Motion,
): { readonly cruiseS: number; readonly turnS: number } {
  const { pathMm, turnMm, lines } = infillOn(census, recipe, 0, census.layers.count)
  if (!(pathMm > 0)) return { cruiseS: 0, turnS: 0 }
  const { room, oneWay } = census.moves
  const { directions, pathFactor } = PATTERN_MODELS[recipe.pattern]
  const spacing = infillSpacingMm(recipe)
  const { speedMmS, accelMmS2, cornerMmS } = motion
  const askew = Math.acos(Math.min(1, 1 / room.slant))
  const corner = (side: 1 | -1): number =>
    cornerSpeedMmS(Math.sin(Math.PI / 4 + (side * askew) / 2), motion)
  const pace = paceOf(recipe.pattern, spacing, motion)
  const stepMm = recipe.lineMm + (lines > 0 ? turnMm / lines : 0)
  const stepS = moveTime(stepMm, speedMmS, accelMmS2, corner(-1), corner(1))
  // Lines that wind are as many as end on the whole edge.
  const straight = sum(room.acrossMm) / spacing
  const more = pathFactor > 1 && straight > 0 ? Math.max(1, lines / straight) : 1
  let timeS = 0
  let laidMm = 0
  let count = 0
  for (let i = 0; i < room.lengthMm.length; i++) {
    const lengthMm = (pathFactor * room.lengthMm[i]!) / more - recipe.lineMm
    if (lengthMm <= 0) continue
    const some = (more * room.acrossMm[i]!) / spacing
    timeS += some * moveTime(lengthMm, pace, accelMmS2, corner(-1), corner(1))
    laidMm += some * lengthMm
    count += some
  }
  const zigzags = Math.min(
    count,
    begun(
      census,
      recipe,
      between(oneWay.infill, spacing, ({ hops }) => sum(hops.count)),
    ),
  )
  const slow = Math.min(cornerMmS, speedMmS)
  const restS = (slow / accelMmS2) * (1 - slow / (2 * speedMmS))
  const cruiseS = (laidMm + (count - zigzags) * stepMm) / speedMmS
  const turnS = timeS + (count - zigzags) * stepS + 2 * zigzags * restS - cruiseS
  return { cruiseS: directions * cruiseS, turnS: directions * turnS }
}

/** Of lines that wind most go on round what straight ones begin anew behind. */
function begun(census: Census, { pattern, infillPct }: Recipe, straight: number): number {
  const beyond = straight - sum(census.layers.rooms)
  if (beyond <= 0 || PATTERN_MODELS[pattern].pathFactor === 1) return straight
  return straight - beyond * Math.max(0, 1 - 1.2 * Math.sqrt(infillPct / 100))
}

function travels(census: Census, recipe: Recipe, printer: Printer): Taken['travels'] {
  const { directions } = PATTERN_MODELS[recipe.pattern]
  const { moves } = census
  const route = directions > 1 ? moves.crossed : moves.oneWay
  const { travelMmS: speedMmS, travelAccelMmS2: accelMmS2, retractS } = printer
  return [false, true].map((far) => {
    const time = (table: TravelTable): number =>
      travelTime(table, far, { speedMmS, accelMmS2, retractS })
    const over = far ? route.farHops : route.nearHops
    const bare = time(route.back)
    let seconds = time(route.wall) + time(route.skin) + bare
    if (recipe.infillPct > 0) {
      const spacing = infillSpacingMm(recipe)
      const twice = directions > 1 ? directions / 2 : 1
      const straight = between(route.infill, spacing, ({ hops }) => sum(hops.count))
      const zigzags = twice * begun(census, recipe, straight)
      const filled = between(
        route.infill,
        spacing,
        ({ hops, back }) => (straight > 0 ? zigzags / straight : 0) * time(hops) + time(back),
      )
      const { acrossMm, lengthMm } = moves.room
      const long = acrossMm.map((mm, i) => (lengthMm[i]! > recipe.lineMm ? mm : 0))
      const lines = (directions * sum(long)) / spacing
      seconds += (filled - bare) * (zigzags > 0 ? Math.min(1, lines / zigzags) : 0)
    }
    return { seconds, over }
  })
}

function between<T extends { readonly spacingMm: number }>(
  steps: readonly T[],
  spacingMm: number,
  measure: (step: T) => number,
): number {
  const last = steps.at(-1)!
  if (spacingMm >= last.spacingMm) return measure(last)
  const to = steps.findIndex((step) => step.spacingMm >= spacingMm)
  if (to === 0) return measure(steps[0]!)
  const [narrow, wide] = [steps[to - 1]!, steps[to]!]
  const part = Math.log(spacingMm / narrow.spacingMm) / Math.log(wide.spacingMm / narrow.spacingMm)
  return measure(narrow) * (1 - part) + measure(wide) * part
}

function times({ cruiseS, turnS, travels: all }: Taken, by: number): Taken {
  return {
    cruiseS: cruiseS * by,
    turnS: turnS * by,
    travels: all.map(({ seconds, over }) => ({ seconds: seconds * by, over })),
  }
}

const total = ({ cruiseS, turnS, travels: all }: Taken): number =>
  all.reduce((most, { seconds }) => most + seconds, cruiseS + turnS)

function sum(values: ArrayLike<number>): number {
  return Array.from(values).reduce((most, value) => most + value, 0)
}

function share(values: ArrayLike<number>, i: number): number {
  const all = sum(values)
  return all > 0 ? values[i]! / all : 0
}
