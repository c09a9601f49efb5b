import { HABIT_RANGES } from '../../../src/core/data/habits.ts'
import { HABIT_LIMITS } from '../../../src/core/data/limits.ts'
import type { HabitNumber, KnownHabits } from '../../../src/core/model/habits.ts'
import { HABIT_DEFAULTS } from '../../../src/core/model/habits.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import type { Pose } from '../../../src/core/model/settings.ts'
import { asLaid } from './asLaid.ts'
import type { Pair } from './readPairs.ts'
import { reckon } from './reckon.ts'

/** A pair with its mesh as it lies on the bed. */
export interface Laid {
  readonly pair: Pair
  readonly mesh: Mesh
  readonly pose: Pose
  readonly shaped: boolean
}

/** What other parts may teach; a hold goes with the band. */
const TAUGHT = [
  'slopeBandMm',
  'overlapShare',
  'joinedShare',
  'strandShare',
  'smallRoomMm2',
] as const satisfies readonly HabitNumber[]

/** What a part misses by for reasons no habit of these has, one standard deviation. */
const OWN_MISS = 0.02
/** Rounds in which parts that miss by far more lose their say. */
const ROUNDS = 8

/**
 * Habits as they would be learnt from toolpaths: widths by kind off the pair's own, all others off
 * the other shaping pairs that were laid with the same settings. All at once: a miss is taken as
 * linear in every habit, the range of a habit as four standard deviations of what is likely, and a
 * part that misses by far more than the others weighs less (Cauchy). No pair that checks teaches.
 */
export function learnHabits(own: Laid, all: readonly Laid[]): KnownHabits {
  const others = all.filter(
    ({ pair, shaped }) => shaped && pair !== own.pair && alike(pair, own.pair),
  )
  const { habits } = asLaid(own.pair)
  if (others.length === 0) return habits
  const lessons = others.map(lessonOf)
  let steps = TAUGHT.map(() => 0)
  for (let round = 0; round < ROUNDS; round++) {
    const weights = lessons.map(({ miss, slopes }) => {
      const left = miss - dot(slopes, steps)
      return 1 / (OWN_MISS ** 2 + left ** 2)
    })
    const matrix = TAUGHT.map((_, a) =>
      TAUGHT.map((__, b) =>
        lessons.reduce(
          (sum, { slopes }, i) => sum + weights[i]! * slopes[a]! * slopes[b]!,
          a === b ? 1 : 0,
        ),
      ),
    )
    const right = TAUGHT.map((_, a) =>
      lessons.reduce((sum, { slopes, miss }, i) => sum + weights[i]! * slopes[a]! * miss, 0),
    )
    steps = solve(matrix, right)
  }
  const learnt = Object.fromEntries(TAUGHT.map((habit, i) => [habit, moved(habit, steps[i]!)]))
  return { ...learnt, holdMm: learnt['slopeBandMm']!, ...habits }
}

/** By the same hand, on the same machine, as far as can be told. */
function alike(a: Pair, b: Pair): boolean {
  return (
    a.author === b.author &&
    a.layerMm === b.layerMm &&
    a.walls === b.walls &&
    a.pattern === b.pattern
  )
}

/** One standard deviation of a habit that is not known. */
const deviation = (habit: HabitNumber): number =>
  (HABIT_RANGES[habit].high - HABIT_RANGES[habit].low) / 4

/** A habit so many deviations from what is usual, within what is accepted. */
function moved(habit: HabitNumber, deviations: number): number {
  const { min, max } = HABIT_LIMITS[habit]
  return Math.min(max, Math.max(min, HABIT_DEFAULTS[habit] + deviations * deviation(habit)))
}

/** ln of seen ÷ reckoned, and how ln of what is reckoned follows each habit, per deviation. */
interface Lesson {
  readonly miss: number
  readonly slopes: readonly number[]
}

const known = new Map<string, Lesson>()

function lessonOf({ pair, mesh, pose }: Laid): Lesson {
  const before = known.get(pair.name)
  if (before !== undefined) return before
  const laid = asLaid(pair)
  const lnOf = (habits: KnownHabits): number =>
    Math.log(reckon(laid.pair, mesh, pose, { ...habits, ...laid.habits }).depositMm3)
  const usual = lnOf({})
  const slopes = TAUGHT.map((habit) => {
    const at = (sign: number): KnownHabits => {
      const value = moved(habit, sign)
      return habit === 'slopeBandMm' ? { [habit]: value, holdMm: value } : { [habit]: value }
    }
    return (lnOf(at(1)) - lnOf(at(-1))) / 2
  })
  const lesson = { miss: Math.log(pair.seen.partMm3) - usual, slopes }
  known.set(pair.name, lesson)
  return lesson
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * b[i]!, 0)

/** Solves a small symmetric positive system by elimination. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!])
  const n = rows.length
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      if (i === k) continue
      const times = rows[i]![k]! / rows[k]![k]!
      for (let j = k; j <= n; j++) rows[i]![j]! -= times * rows[k]![j]!
    }
  }
  return rows.map((row, k) => row[n]! / row[k]!)
}
