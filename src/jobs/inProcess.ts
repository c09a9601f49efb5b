import type { Outcome } from '../core/model/problem.ts'
import { createHandler, type Handler } from './handle.ts'
import { CANCELLED } from './problemOf.ts'
import type { JobEvent, JobKind, JobTable } from './protocol.ts'
import type { Runner, RunOptions } from './runner.ts'

/**
 * Runs each job right here, one after the other: for tests and Node. A job that has begun is not
 * ended by its signal.
 */
export function createInProcessRunner(handle: Handler = createHandler()): Runner {
  let queue: Promise<unknown> = Promise.resolve()
  let closed = false

  async function runNow<K extends JobKind>(
    ask: JobTable[K]['ask'],
    { onEvent, signal }: RunOptions<K>,
  ): Promise<Outcome<JobTable[K]['answer']>> {
    const ended = () => closed || signal?.aborted === true
    if (ended()) return { ok: false, problem: CANCELLED }
    const outcome: Outcome<unknown> = await handle(ask, (event: JobEvent) => {
      if (!ended()) onEvent?.(event)
    })
    if (ended()) return { ok: false, problem: CANCELLED }
    return outcome as Outcome<JobTable[K]['answer']>
  }

  return {
    run(ask, options = {}) {
      const running = queue.then(() => runNow(ask, options))
      queue = running
      return running
    },
    close() {
      closed = true
    },
  }
}
