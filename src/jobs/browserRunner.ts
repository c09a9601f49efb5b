import workerUrl from './analyse.worker.ts?worker&url'
import { createPoolRunner } from './poolRunner.ts'
import type { Runner } from './runner.ts'
import { webWorkers } from './webWorker.ts'

/**
 * Changes with every build in which a reader, the measure or the census changed: the worker's file
 * is named by its content. What was kept under another one is done anew. While developing its name
 * says nothing of its content, so nothing is kept from one load of the page to the next.
 */
export const COUNTED_BUILD: string = import.meta.env.DEV
  ? `${workerUrl} ${performance.timeOrigin}`
  : workerUrl

/** The page's runner: a pool of module workers. */
export function createBrowserRunner(): Runner {
  return createPoolRunner({
    spawn: webWorkers(() => new Worker(workerUrl, { type: 'module' })),
    cores: navigator.hardwareConcurrency,
    onHand: watchHands,
  })
}

/** Tells of every press of a key or a button, of a drag and of the wheel. */
function watchHands(tell: () => void): void {
  for (const name of ['keydown', 'pointerdown', 'wheel'])
    window.addEventListener(name, tell, { capture: true, passive: true })
  window.addEventListener('pointermove', ({ buttons }) => {
    if (buttons !== 0) tell()
  })
}
