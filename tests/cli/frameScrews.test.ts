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
    const nameOf = (id: string) => [...parts, ...aircraft.items].find((one) => one.id === id)?.name
    expect(joints.map(({ a, b }) => [a, b])).toEqual(
      aircraft.joints.map(({ a, b }) => [nameOf(a.partId), nameOf(b.partId)]),
    )
    const ending = aircraft.joints.filter(
      ({ fastener }) => fastener !== null && fastener.end !== 'through',
    )
    expect(joints.reduce((sum, { count }) => sum + count, 0)).toBe(
      ending.reduce((sum, { a, fastener }) => {
        return sum + (fastener?.end === 'post' ? 2 : 1) * a.bores.length
      }, 0),
    )
    for (const { holes, screw, count, warnings, gripMm } of joints) {
      // What lies on a face is clamped by nothing.
      if (holes === 0) expect([gripMm, count]).toEqual([0, 0])
      else expect(gripMm).toBeGreaterThan(0)
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
    reports.filter(({ a, b }) => [a, b].includes('Front arm')).length
  const parts = frame.parts.map((part) =>
    part.name === 'Front arm' ? { ...part, quantity: 1 } : part,
  )
  // Each arm stands on the deck and holds a motor.
  expect(arms(jointReports(frame))).toBe(4)
  expect(arms(jointReports({ ...frame, parts }))).toBe(2)
})
