import { existsSync, readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { HABIT_LIMITS } from '../../../src/core/data/limits.ts'
import type { Bead, HabitNumber, KnownHabits } from '../../../src/core/model/habits.ts'
import { toolpathReader } from '../../../src/core/toolpath/readToolpath.ts'
import type { Pair } from './readPairs.ts'

/**
 * A pair with the walls and the line that its own moves tell instead of those set, and its habits.
 */
export interface AsLaid {
  readonly pair: Pair
  readonly habits: KnownHabits
}

const known = new Map<string, AsLaid>()

/**
 * Reads a pair's moves, `NAME.gcode` or `NAME.gcode.gz` beside its mesh; as set where there are
 * none. Where they do not tell how lines end they are read as ending like `bead`.
 */
export function asLaid(pair: Pair, bead?: Bead): AsLaid {
  const key = `${pair.name} ${bead}`
  const before = known.get(key)
  if (before) return before
  const bytes = movesOf(pair.meshFile.replace(/\.[^.]+$/, '.gcode'))
  const read = bytes === null ? { pair, habits: {} } : readMoves(pair, bytes, bead)
  known.set(key, read)
  return read
}

function movesOf(file: string): Uint8Array | null {
  if (existsSync(file)) return readFileSync(file)
  return existsSync(`${file}.gz`) ? gunzipSync(readFileSync(`${file}.gz`)) : null
}

function readMoves(pair: Pair, bytes: Uint8Array, bead: Bead | undefined): AsLaid {
  const reader = toolpathReader({ ...PRINTER_DEFAULT, diameterMm: null, bead })
  reader.push(bytes)
  const { recipe, habits } = reader.end()
  const beadMm = recipe.lineMm ?? pair.seen.beadMm
  const within = Object.entries(habits).map(([habit, value]) => {
    if (typeof value !== 'number') return [habit, value]
    const { min, max } = HABIT_LIMITS[habit as HabitNumber]
    return [habit, Math.min(max, Math.max(min, value))]
  })
  return {
    pair: { ...pair, walls: recipe.walls ?? pair.walls, seen: { ...pair.seen, beadMm } },
    habits: Object.fromEntries(within) as KnownHabits,
  }
}
