import { expect, it } from 'vitest'
import { jointReports } from '../../src/cli/frameScrews.ts'
import { loadFrame } from '../../src/cli/loadFrame.ts'

it.each(['demo', 'tern'])(
  'tells all joints of %s, and every fastened hole has its screw',
  async (name) => {
    const loaded = await loadFrame(name, '.', 'en-GB')
    if (!loaded.ok) throw new Error(loaded.problem.message)
    const { frame } = loaded.value
    const { parts, aircraft } = frame
    const joints = jointReports(frame)
    expect(joints.length).toBeGreaterThan(8)
    const nameOf = (id: string) => parts.find((part) => part.id === id)?.name
    expect(joints.map(({ a, b }) => [a, b])).toEqual(
      aircraft.joints.map(({ a, b }) => [nameOf(a.partId), nameOf(b.partId)]),
    )
    const ending = aircraft.joints.filter(
      ({ fastener }) => fastener !== null && fastener.end !== 'through',
    )
    expect(joints.reduce((sum, { count }) => sum + count, 0)).toBe(
      ending.reduce((sum, { a }) => sum + a.bores.length, 0),
    )
    for (const { screw, count, warnings, gripMm } of joints) {
      expect(gripMm).toBeGreaterThan(0)
      if (screw !== null) expect(count).toBeGreaterThan(0)
      else if (count > 0) expect(warnings.length).toBeGreaterThan(0)
    }
  },
)

it('leaves out joints of pieces that do not fly any more', async () => {
  const loaded = await loadFrame('demo', '.', 'en-GB')
  if (!loaded.ok) throw new Error(loaded.problem.message)
  const { frame } = loaded.value
  const arms = (reports: ReturnType<typeof jointReports>) =>
    reports.filter(({ b }) => b === 'Front arm').length
  const parts = frame.parts.map((part) =>
    part.name === 'Front arm' ? { ...part, quantity: 1 } : part,
  )
  expect(arms(jointReports(frame))).toBe(2)
  expect(arms(jointReports({ ...frame, parts }))).toBe(1)
})
