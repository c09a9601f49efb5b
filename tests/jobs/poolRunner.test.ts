import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { createPoolRunner } from '../../src/jobs/poolRunner.ts'
import type { AskMessage, Ask } from '../../src/jobs/protocol.ts'

const SOURCE = { hash: 'h', name: 'a.stl', blob: new Blob(['solid']) }
const FREE = { kind: 'analyse', source: SOURCE } as unknown as Ask & { kind: 'analyse' }
const DRAW = { kind: 'draw' } as unknown as Ask & { kind: 'draw' }

/** A runner on two cores whose workers answer when told, and the hand that is at work. */
function stage() {
  const busy: (() => void)[] = []
  let press = (): void => undefined
  const runner = createPoolRunner({
    cores: 2,
    onHand: (tell) => (press = tell),
    spawn: (onMessage) => ({
      send(message) {
        const { id } = message as AskMessage
        busy.push(() => onMessage({ id, kind: 'answer', answer: null }))
      },
      end: () => undefined,
    }),
  })
  return { busy, runner, press: () => press() }
}

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

describe('a core of two is the page’s', () => {
  test('until the first picture is drawn', async () => {
    const { busy, runner } = stage()
    void runner.run(FREE)
    void runner.run(FREE)
    expect(busy).toHaveLength(1)
    const drawn = runner.run(DRAW)
    busy.at(-1)?.()
    await drawn
    expect(busy).toHaveLength(3)
  })

  test('for some seconds where no picture is asked for', () => {
    const { busy, runner } = stage()
    void runner.run(FREE)
    void runner.run(FREE)
    vi.advanceTimersByTime(2900)
    expect(busy).toHaveLength(1)
    vi.advanceTimersByTime(200)
    expect(busy).toHaveLength(2)
  })

  test('while a hand is at work, and a moment longer', () => {
    const { busy, runner, press } = stage()
    void runner.run(FREE)
    vi.advanceTimersByTime(5000)
    press()
    void runner.run(FREE)
    for (let held = 0; held < 5; held++) {
      vi.advanceTimersByTime(500)
      expect(busy).toHaveLength(1)
      press()
    }
    // Who is waited for does not wait for it.
    void runner.run(DRAW)
    expect(busy).toHaveLength(2)
    vi.advanceTimersByTime(1000)
    expect(busy).toHaveLength(2)
    busy[1]?.()
    expect(busy).toHaveLength(3)
  })
})
