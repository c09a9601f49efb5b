import { createPoolRunner } from './poolRunner.ts'
import type { Runner } from './runner.ts'
import { webWorkers } from './webWorker.ts'

/** The page's runner: a pool of module workers. */
export function createBrowserRunner(): Runner {
  return createPoolRunner({
    spawn: webWorkers(
      () => new Worker(new URL('./analyse.worker.ts', import.meta.url), { type: 'module' }),
    ),
    cores: navigator.hardwareConcurrency,
  })
}
