import { basename } from 'node:path'
import { refuseHabits } from '../../../src/core/data/habits.ts'
import type { KnownHabits } from '../../../src/core/model/habits.ts'
import { asLaid } from './asLaid.ts'
import type { Laid } from './knownHabits.ts'
import { learnHabits } from './knownHabits.ts'
import { readPairs } from './readPairs.ts'
import { meshOf, poseOf, reckon } from './reckon.ts'
import type { Scored } from './score.ts'
import { score, summarise } from './score.ts'

/*
 * `npm run pairs -- FOLDER` holds the count against real toolpaths: `pairs.json` and a mesh for
 * each of its names. Every second name shapes the defaults, the others check them. `--json` prints
 * everything; `--habits JSON` tries other habits than ours; `--own` takes walls, line and habits
 * off each part's own moves, as far as they tell; `--learn` does and takes the other habits off the
 * shaping ones of its maker's other parts; `--only WORD` takes the names that hold it.
 */

const args = process.argv.slice(2)
const json = args.includes('--json')
const learn = args.includes('--learn')
const own = args.includes('--own')
const valueOf = (flag: string): string | null => {
  const at = args.indexOf(flag)
  return at < 0 ? null : (args[at + 1] ?? null)
}
const folder = args.find(
  (arg, i) => !arg.startsWith('--') && !/^--(habits|only)$/.test(args[i - 1] ?? ''),
)
if (folder === undefined) {
  console.error('Name the folder that holds pairs.json: npm run pairs -- FOLDER')
  process.exit(2)
}
function refuse(words: string): never {
  console.error(words)
  process.exit(2)
}

/** What `work` gives; where it fails the run ends with what it says. */
function orRefuse<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    return refuse((error as Error).message)
  }
}

const habits = orRefuse(() => JSON.parse(valueOf('--habits') ?? '{}') as KnownHabits)
const wrong = refuseHabits(habits)
if (wrong !== null) refuse(wrong)
const only = valueOf('--only') ?? ''

const { pairs, left: unread } = orRefuse(() => readPairs(folder))
const left = [...unread]
const rows: Scored[] = []
/**
 * What `work` gives; null, and the name left out with the reason, where a mesh or its settings
 * cannot be counted.
 */
function orLeave<T>(name: string, work: () => T): T | null {
  try {
    return work()
  } catch (error) {
    left.push({ name, why: (error as Error).message })
    return null
  }
}
const laid = pairs.flatMap((pair, i): Laid[] => {
  const mesh = orLeave(pair.name, () => meshOf(pair))
  return mesh === null ? [] : [{ pair, mesh, pose: poseOf(pair, mesh), shaped: i % 2 === 0 }]
})
laid.forEach((one) => {
  const { pair, mesh, pose, shaped } = one
  if (!pair.name.includes(only)) return
  const row = orLeave(pair.name, () => {
    if (!learn && !own) return score(pair, reckon(pair, mesh, pose, habits), shaped)
    const read = learn ? learnHabits(one, laid) : asLaid(pair)
    return score(pair, reckon(read.pair, mesh, pose, { ...read.habits, ...habits }), shaped)
  })
  if (row === null) return
  rows.push(row)
  if (!json) console.log(lineOf(row))
})
const groups = {
  shaping: rows.filter(({ shaped }) => shaped),
  checking: rows.filter(({ shaped }) => !shaped),
  all: rows,
}
if (json) {
  const told = Object.entries(groups).map(([name, group]) => [name, summarise(group)])
  console.log(JSON.stringify({ folder: basename(folder), left, rows, ...Object.fromEntries(told) }))
} else {
  for (const [name, group] of Object.entries(groups)) if (group.length > 0) print(name, group)
  for (const { name, why } of left) console.log(`left out: ${name}: ${why}`)
  if (rows.length === 0) console.log('No pair could be scored.')
}

function lineOf({ pair, reckoned, error, pathError, inside, shaped }: Scored): string {
  const { kinds } = pair.seen
  const { walls, solid, sparse } = reckoned.laterMm3
  const of = (ours: number, seen: number): string =>
    `${ours.toFixed(0).padStart(6)} ${seen.toFixed(0).padStart(6)}`
  return [
    pair.name.slice(-28).padEnd(28),
    shaped ? 'shapes' : 'checks',
    percent(error).padStart(7),
    inside ? 'inside ' : 'OUTSIDE',
    `−${percent(reckoned.low, '')} +${percent(reckoned.high, '')}`.padEnd(16),
    `walls ${of(walls, kinds.walls)}`,
    `solid ${of(solid, kinds.solid)}`,
    `sparse ${of(sparse, kinds.sparse)}`,
    `first ${of(reckoned.firstMm3, kinds.first)}`,
    `path ${pathError === null ? '' : percent(pathError)}`,
    `layers ${reckoned.layers} ${pair.seen.layers ?? ''}`,
  ].join('  ')
}

function print(name: string, group: readonly Scored[]): void {
  const { pairs: count, median, mean, bias, tenth, inside, width, kinds } = summarise(group)
  const told = Object.entries(kinds).map(
    ([kind, { reckoned, seen }]) =>
      `${kind} ${(reckoned / 1000).toFixed(1)} for ${(seen / 1000).toFixed(1)}`,
  )
  console.log(
    `${name}: ${count} pairs, median ${percent(median, '')}, mean ${percent(mean, '')}, bias ${percent(bias)}, ` +
      `one in ten beyond ${percent(tenth, '')}, inside ${inside} of ±${percent(width, '')}; cm³: ${told.join(', ')}`,
  )
}

function percent(share: number, plus = '+'): string {
  return `${share >= 0 ? plus : '−'}${Math.abs(100 * share).toFixed(1)} %`
}
