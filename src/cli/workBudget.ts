import { isMainThread } from 'node:worker_threads'
import type { Budget } from '../core/census/budget.ts'

/**
 * A budget that begins now. By processor time where the process does nothing else, so that a busy
 * machine makes no figure coarse; a thread is not told its own, and goes by the clock while it
 * works.
 */
export function workBudget(): Budget {
  if (!isMainThread) {
    const from = performance.now()
    return { spentS: () => (performance.now() - from) / 1000 }
  }
  const from = process.cpuUsage()
  return {
    spentS() {
      const { user, system } = process.cpuUsage(from)
      return (user + system) / 1e6
    },
  }
}
