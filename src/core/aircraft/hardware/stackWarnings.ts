import { stockedLengths, THREADS } from './data.ts'
import { INSERT_INFILL_PCT, INSERT_WALL_MM, insertSeat } from './insert.ts'
import { headOf, threadLengthMm } from './screw.ts'
import type { MetricSize } from './types.ts'
import type { Stack, StackAnswer, StackWarning, StackWarningCode } from './stack.ts'
import { mm } from '../../words/mm.ts'

/**
 * Boss outside diameter and hole depth in screw diameters (celofasteners.com/en/content/220;
 * hkymould.com agrees on the boss).
 */
const PLASTIC_BOSS = 2
const PLASTIC_HOLE = 2.7

type Lengths = Omit<StackAnswer, 'warnings'>

/** Everything wrong with a stack, the gravest first. */
export function stackWarnings(stack: Stack, lengths: Lengths): readonly StackWarning[] {
  return [
    tooLong(stack, lengths),
    shortOfThread(stack, lengths),
    nothingStocked(stack, lengths),
    shankTooLong(stack, lengths),
    headTooDeep(stack),
    bossTooThin(stack),
    insertInOpenInfill(stack),
    holeTooShallow(stack),
  ].filter((warning) => warning !== null)
}

function warn(code: StackWarningCode, text: string): StackWarning {
  return { code, text }
}

/** Only a screw the builder chose can be too long: the stocked one is picked to fit. */
function tooLong(stack: Stack, { lengthMm, mostMm, gripMm }: Lengths): StackWarning | null {
  if (lengthMm === null || mostMm === null || lengthMm <= mostMm) return null
  const overMm = mm(lengthMm - mostMm)
  const limitMm = mm(mostMm - gripMm)
  if (stack.end.kind === 'post') {
    return warn(
      'too-long',
      `Screw too long: ${mm(lengthMm)} mm meets the one from the post’s other end ${overMm} mm early. ` +
        `Take ${mm(mostMm)} mm or less.`,
    )
  }
  return warn(
    'too-long',
    stack.end.kind === 'motor'
      ? `Screw too long: ${mm(lengthMm)} mm reaches ${overMm} mm past the ${limitMm} mm of thread in ` +
          `the motor and can cut its windings. Take ${mm(mostMm)} mm or less.`
      : `Screw too long: ${mm(lengthMm)} mm meets the bottom of the ${limitMm} mm deep hole ` +
          `${overMm} mm early. Take ${mm(mostMm)} mm or less.`,
  )
}

function shortOfThread(stack: Stack, lengths: Lengths): StackWarning | null {
  const { lengthMm, leastMm, gripMm, engagementMm } = lengths
  if (lengthMm === null || engagementMm === null || lengthMm >= leastMm) return null
  const wantedMm = mm(leastMm - gripMm)
  const into = stack.end.kind
  return warn(
    'short-of-thread',
    `Too short of thread: ${mm(engagementMm)} mm of the screw is left for the ${into}, ` +
      `it wants ${wantedMm} mm. Take ${mm(leastMm)} mm or more.`,
  )
}

function nothingStocked(stack: Stack, { lengthMm, leastMm, mostMm }: Lengths): StackWarning | null {
  if (lengthMm !== null) return null
  const stocked = stockedLengths(stack.size)
  const wanted = mostMm === null ? `${mm(leastMm)} mm or more` : `${mm(leastMm)}–${mm(mostMm)} mm`
  const longer = stocked.find((length) => length >= leastMm)
  const advice =
    longer === undefined || mostMm === null
      ? 'Stack less, or use a standoff.'
      : `Put ${mm(longer - mostMm)} mm of washers under the head and take an ${stack.size} × ${longer}` +
        (stack.end.kind === 'motor' ? '; without them it can cut the windings.' : '.')
  return warn(
    'nothing-stocked',
    `No stocked ${stack.size} length fits: it has to be ${wanted}. ${advice}`,
  )
}

/** A nut runs onto the plain shank, or the shank meets the insert, before the layers are tight. */
function shankTooLong(stack: Stack, { lengthMm, gripMm }: Lengths): StackWarning | null {
  if (lengthMm === null) return null
  const threadMm = threadLengthMm(stack.size)
  const shankMm = lengthMm - threadMm
  if (shankMm <= gripMm) return null
  return warn(
    'shank-too-long',
    `Too short of thread: a standard ${stack.size} × ${mm(lengthMm)} has ${mm(threadMm)} mm of thread ` +
      `and a plain shank of ${mm(shankMm)} mm, but only ${mm(gripMm)} mm to clamp. ` +
      'Take a shorter screw or one threaded to its head.',
  )
}

function headTooDeep(stack: Stack): StackWarning | null {
  const head = headOf(stack.standard, stack.size)
  const [first] = stack.layers
  if (head.shape !== 'cone' || !first || first.thicknessMm >= head.heightMm) return null
  return warn(
    'head-deeper-than-plate',
    `Head deeper than plate: a countersunk ${stack.size} head is ${head.heightMm} mm deep, ` +
      `“${first.name}” is ${mm(first.thicknessMm)} mm thick. Take a button head or a thicker plate.`,
  )
}

function bossTooThin(stack: Stack): StackWarning | null {
  const { end, size } = stack
  if (end.kind !== 'insert' && end.kind !== 'plastic') return null
  if (end.bossMm === null) return null
  if (end.kind === 'insert') return insertBossTooThin(size, end.bossMm, end.insertMm)
  const leastMm = PLASTIC_BOSS * THREADS[size].diameterMm
  if (end.bossMm >= leastMm - 1e-9) return null
  return warn(
    'boss-too-thin',
    `Boss too thin: ${mm(end.bossMm)} mm across, an ${size} screw in plastic wants ${mm(leastMm)} mm ` +
      'or more. Thicken the boss.',
  )
}

function insertBossTooThin(
  size: MetricSize,
  wideMm: number,
  insertMm: number,
): StackWarning | null {
  const { bossMm, leastBossMm } = insertSeat(size, insertMm)
  if (wideMm >= bossMm - 1e-9) return null
  const why =
    wideMm < leastBossMm - 1e-9
      ? 'So thin it may split as the insert goes in.'
      : 'The insert pulls out earlier.'
  return warn(
    'boss-too-thin',
    `Boss too thin: ${mm(wideMm)} mm across, an ${size} insert wants ${mm(bossMm)} mm or more, ` +
      `${INSERT_WALL_MM} mm of plastic all round. ${why} Thicken the boss.`,
  )
}

/** Walls thinner than an insert wants leave it in the infill. */
function insertInOpenInfill({ end }: Stack): StackWarning | null {
  if (end.kind !== 'insert' || end.print === undefined) return null
  const { walls, lineMm, infillPct } = end.print
  const wallMm = walls * lineMm
  if (wallMm >= INSERT_WALL_MM - 1e-9 || infillPct >= INSERT_INFILL_PCT) return null
  const enough = Math.ceil(INSERT_WALL_MM / lineMm - 1e-9)
  return warn(
    'insert-in-open-infill',
    `Insert in open infill: ${walls} walls are ${mm(wallMm)} mm, it wants ${INSERT_WALL_MM} mm of them ` +
      `or ${INSERT_INFILL_PCT} % infill round it, and the part has ${mm(infillPct)} %. ` +
      `Print it with ${enough} walls, or give the boss a zone of ${INSERT_INFILL_PCT} % or more.`,
  )
}

function holeTooShallow(stack: Stack): StackWarning | null {
  const { end, size } = stack
  if (end.kind !== 'insert' && end.kind !== 'plastic') return null
  if (end.holeDepthMm === null) return null
  const leastMm =
    end.kind === 'insert'
      ? insertSeat(size, end.insertMm).depthMm
      : PLASTIC_HOLE * THREADS[size].diameterMm
  if (end.holeDepthMm >= leastMm - 1e-9) return null
  return warn(
    'hole-too-shallow',
    `Hole too shallow: ${mm(end.holeDepthMm)} mm deep, it wants ${mm(leastMm)} mm or more. Deepen the hole.`,
  )
}
