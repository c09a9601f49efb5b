import { beforeAll, expect, test } from 'vitest'
import { runPriceHere } from '../support/priceCommand.ts'

interface Hole {
  readonly part: string
  readonly hole: string
  readonly diameterMm: number
  readonly depthMm: number
  readonly use: string
  readonly drillMm: number | null
  readonly note: string
}

let drill: readonly Hole[] = []
beforeAll(async () => {
  const { out } = await runPriceHere('.', ['--frame', 'demo', '--json'])
  drill = (JSON.parse(out) as { drill: readonly Hole[] }).drill
}, 480_000)

test('drill tells each hole by the keys that the command promises', () => {
  expect(drill.length).toBeGreaterThan(30)
  for (const hole of drill) {
    expect(Object.keys(hole)).toEqual([
      'part',
      'hole',
      'diameterMm',
      'depthMm',
      'use',
      'drillMm',
      'note',
    ])
  }
  const numbers = drill.map(({ part, hole }) => `${part} ${hole}`)
  expect(new Set(numbers).size).toBe(numbers.length)
})

test('what joints say goes before a guess, and a clearance is never below ISO 273 fine', () => {
  const lower = drill.filter(({ part }) => part === 'Lower deck')
  const joined = lower.filter(({ note }) => note.startsWith('Known from its joint.'))
  // Two a front arm, three for the boom, four posts, two a bracket: the sample's joints.
  expect(joined).toHaveLength(2 * 2 + 3 + 4 + 2 * 2)
  for (const { use, drillMm } of joined) {
    expect(use).toBe('M3 passes')
    expect(drillMm).toBeGreaterThanOrEqual(3.2)
  }
  const inserts = drill.filter(({ part, use }) => part === 'Front arm' && use === 'M3 insert')
  expect(inserts.some(({ note }) => note.startsWith('Known from its joint.'))).toBe(true)
})
