import { isMainThread } from 'node:worker_threads'
import { createWorkClock } from '../jobs/workClock.ts'
import type { Budget } from '../core/census/budget.ts'

/**
 * A budget that begins now. By processor time where the process does nothing else, so that a busy
 * machine makes no figure coarse; a thread is not told its own and works it out.
 */
export function workBudget(): Budget {
  if (!isMainThread) {
    return { spentS: createWorkClock(wallMs) }
  }
  const from = process.cpuUsage()
  return {
    spentS() {
      const { user, system } = process.cpuUsage(from)
      return (user + system) / 1e6
    },
  }
}

function wallMs(): number {
  return performance.now()
}
