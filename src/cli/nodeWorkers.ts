import { Worker } from 'node:worker_threads'
import type { Spawn } from '../jobs/pool.ts'

/** Makes Node's worker threads fit the pool. `url` is a JavaScript file. */
export function nodeWorkers(url: URL): Spawn {
  return (onMessage, onDeath) => {
    const worker = new Worker(url)
    let over = false
    const die = (reason: string): void => {
      if (!over) onDeath(reason)
      over = true
    }
    worker.on('message', onMessage)
    worker.on('error', (error) => die(error instanceof Error ? error.message : String(error)))
    worker.on('exit', (code) => die(`the worker ended with code ${code}`))
    return {
      send: (message) => worker.postMessage(message),
      end: () => {
        over = true
        void worker.terminate()
      },
    }
  }
}
