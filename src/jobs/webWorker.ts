import type { Spawn } from './pool.ts'

/** Makes the browser's workers fit the pool. `start` makes a new one. */
export function webWorkers(start: () => Worker): Spawn {
  return (onMessage, onDeath) => {
    const worker = start()
    worker.addEventListener('message', ({ data }: MessageEvent<unknown>) => onMessage(data))
    worker.addEventListener('messageerror', () => onDeath('its answer could not be passed on'))
    worker.addEventListener('error', (event) => {
      event.preventDefault()
      onDeath(event.message === '' ? 'the worker stopped' : event.message)
    })
    return {
      send: (message) => worker.postMessage(message, []),
      end: () => worker.terminate(),
    }
  }
}
