import { expect, test } from 'vitest'
import { createWorkClock } from '../../src/jobs/workClock.ts'

/** A machine whose cores are shared: `share` of the time a thread gets. */
function machine(share: () => number) {
  let atMs = 0
  const spend = (workMs: number): void => {
    atMs += workMs / share()
  }
  return { now: () => atMs, spend }
}

test.each([
  ['alone on its core', 1],
  ['beside one other', 1 / 2],
  ['beside three others', 1 / 4],
])('a thread %s is told what it worked, not what it waited', (_, later) => {
  let share = 1
  const { now, spend } = machine(() => share)
  const yardstick = (): void => {
    spend(2)
  }
  // An earlier part, when the machine was quiet.
  createWorkClock(now, yardstick)()
  share = later
  const worked = createWorkClock(now, yardstick)
  // Asked in small steps, as layers are counted.
  for (let i = 0; i < 1000; i++) {
    spend(10)
    worked()
  }
  // Ten seconds, and what the measuring took: a fiftieth of the time on the wall.
  expect(worked()).toBeGreaterThan(9.9)
  expect(worked()).toBeLessThan(11)
})

test('a clock that stands still brings no nonsense', () => {
  expect(createWorkClock(() => 5)()).toBe(0)
})

test('what one clock saw of the machine says nothing of another', () => {
  const quick = machine(() => 1)
  createWorkClock(quick.now, () => {
    quick.spend(2)
  })
  // A thread of half the speed, alone on its core all the time.
  const slow = machine(() => 1)
  const worked = createWorkClock(slow.now, () => {
    slow.spend(4)
  })
  slow.spend(10_000)
  expect(worked()).toBeGreaterThan(9.9)
})
