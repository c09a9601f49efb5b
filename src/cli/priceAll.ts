import { availableParallelism } from 'node:os'
import { resolve } from 'node:path'
import { createPool } from '../jobs/pool.ts'
import { nodeWorkers } from './nodeWorkers.ts'
import type { PriceOptions } from './options.ts'
import { pricePath } from './priceFile.ts'
import type { PartReport } from './report.ts'

/** What a worker is asked. */
export interface FileAsk {
  readonly file: string
  readonly path: string
  readonly options: PriceOptions
}

export interface PriceAllOptions {
  /** Relative paths count from here. */
  readonly base: string
  readonly cores?: number
  readonly onProgress: (text: string) => void
}

/**
 * Files handed out ahead of the workers, for each worker: enough that none waits, few enough that
 * memory stays flat.
 */
const AHEAD = 4

/**
 * Prices the files on all cores and hands their parts on, in the order of the command line, which
 * keeps those that are done before their turn, or each as soon as it is done. One file is priced
 * right here, without a worker.
 */
export async function priceAll(
  given: PriceOptions,
  { base, cores = availableParallelism(), onProgress }: PriceAllOptions,
  order: 'in order' | 'as they come',
  onParts: (parts: readonly PartReport[]) => void,
): Promise<void> {
  const { files } = given
  const zones = given.zones.map((zone) => ({ ...zone, path: resolve(base, zone.path) }))
  const options = { ...given, zones }
  const asks = files.map((file): FileAsk => ({ file, path: resolve(base, file), options }))
  if (asks.length === 1) {
    const [{ file, path }] = asks as [FileAsk]
    onParts(
      pricePath(file, path, options, (name, fraction) =>
        onProgress(`${name}: ${Math.floor(100 * fraction)} %`),
      ),
    )
    return
  }
  const size = Math.min(cores, asks.length)
  const pool = createPool<FileAsk, never, readonly PartReport[]>({
    spawn: nodeWorkers(new URL('./worker.mjs', import.meta.url)),
    size,
    idleMs: 5000,
    memory: 0,
  })
  const start = (ask: FileAsk): Promise<readonly PartReport[]> =>
    pool
      .run({ ask, name: ask.file, priority: 0, weight: 0, urgent: false, keeps: null })
      .then((outcome) =>
        outcome.ok
          ? outcome.value
          : [
              {
                file: ask.file,
                error: {
                  code: outcome.problem.code,
                  message: `${outcome.problem.message} ${outcome.problem.advice}`,
                },
              },
            ],
      )
  let done = 0
  let handedOn = 0
  const waiting = new Map<number, readonly PartReport[]>()
  const running = new Set<Promise<void>>()
  for (const [index, ask] of asks.entries()) {
    const work = start(ask).then((parts) => {
      running.delete(work)
      take(index, parts)
    })
    running.add(work)
    // Whichever is done first makes room for the next: a slow file holds up no other.
    if (running.size >= size * AHEAD) await Promise.race(running)
  }
  await Promise.all(running)
  pool.close()

  function take(index: number, parts: readonly PartReport[]): void {
    done++
    onProgress(`${done} of ${asks.length} files`)
    if (order === 'as they come') {
      onParts(parts)
      return
    }
    waiting.set(index, parts)
    for (let next = waiting.get(handedOn); next; next = waiting.get(handedOn)) {
      waiting.delete(handedOn++)
      onParts(next)
    }
  }
}
