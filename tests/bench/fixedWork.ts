import type { Page } from 'playwright'
import { watchMainThread } from '../support/mainThread.ts'

const ROUNDS = 5

/**
 * Processor time that a fixed piece of work takes on the page's own thread, ms, the least of some
 * rounds: numbers sorted and added, words joined and elements laid out, as a page does. Machines,
 * and one machine on two days, differ by half and more; multiples of it can be compared.
 */
export async function fixedWork(page: Page): Promise<number> {
  const times: number[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const tasks = await watchMainThread(page, () => page.evaluate(work))
    times.push(Math.max(...tasks.map(({ threadMs }) => threadMs)))
  }
  return Math.min(...times)
}

/** Runs in the page. */
function work(): void {
  let seed = 1
  const numbers = Float64Array.from({ length: 60_000 }, () => {
    seed = (seed * 48_271) % 2_147_483_647
    return seed / 2_147_483_647
  }).sort()
  const list = document.createElement('ul')
  for (let i = 0; i < 300; i++) {
    const line = document.createElement('li')
    line.textContent = `${i} ${numbers[200 * i]!.toFixed(4)} ${numbers.slice(i, i + 9).join(' ')}`
    list.append(line)
  }
  document.body.append(list)
  list.getBoundingClientRect()
  list.remove()
}
