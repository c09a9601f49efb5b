import type { Page } from 'playwright'

/** What the page's own thread was given to do, in counts that are the same on every machine. */
export interface MainThreadWork {
  /** How often the piece of script that ran most often ran: the innermost loop, as it were. */
  readonly mostRuns: number
  /** Bytes copied into the largest message to a worker; what is handed over whole is no copy. */
  readonly mostPosted: number
  /** Values that the largest message from a worker had to be put together of. */
  readonly mostTold: number
  /** Letters of the page's markup, which is what there is to lay out and draw. */
  readonly markup: number
}

/**
 * Loads the page anew under observation, lets `act` do something and tells how much of it fell to
 * the page's own thread. Workers are threads of their own and are not counted.
 */
export async function countMainThread(
  page: Page,
  act: () => Promise<void>,
): Promise<MainThreadWork> {
  const session = await page.context().newCDPSession(page)
  await session.send('Profiler.enable')
  // From before the load: a function compiled earlier is counted as a whole, and not its loops.
  await session.send('Profiler.startPreciseCoverage', { callCount: true, detailed: true })
  await page.addInitScript(watchWorkers)
  await page.reload()
  await page.locator('input[type=file]').first().waitFor({ state: 'attached' })
  // What the load took is not what is asked for.
  await session.send('Profiler.takePreciseCoverage')
  await act()
  const { result } = await session.send('Profiler.takePreciseCoverage')
  await session.detach()
  let mostRuns = 0
  for (const { functions } of result) {
    for (const { ranges } of functions) {
      for (const { count } of ranges) mostRuns = Math.max(mostRuns, count)
    }
  }
  const seen = await page.evaluate(() => ({
    ...window.workerTalk!,
    markup: document.documentElement.outerHTML.length,
  }))
  return { mostRuns, ...seen }
}

declare global {
  interface Window {
    workerTalk?: { mostPosted: number; mostTold: number }
  }
}

/**
 * Runs in the page before any of its scripts, alone: no function of this file but itself is there.
 */
function watchWorkers(): void {
  const talk = { mostPosted: 0, mostTold: 0 }
  window.workerTalk = talk
  /** All that hangs on a message; blobs and files go by reference. */
  class Parcel {
    bytes = 0
    values = 0
    constructor(root: unknown) {
      const left = [root]
      while (left.length > 0) {
        const value = left.pop()
        this.values += 1
        if (value instanceof ArrayBuffer || ArrayBuffer.isView(value))
          this.bytes += value.byteLength
        else if (typeof value === 'string') this.bytes += value.length
        else if (value instanceof Map) left.push(...value.keys(), ...value.values())
        else if (typeof value === 'object' && value !== null && !(value instanceof Blob))
          left.push(...(Object.values(value) as unknown[]))
        else this.bytes += 8
      }
    }
  }
  window.Worker = class extends Worker {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options)
      this.addEventListener('message', ({ data }) => {
        talk.mostTold = Math.max(talk.mostTold, new Parcel(data).values)
      })
    }
    override postMessage(message: unknown, transfer?: Transferable[] | StructuredSerializeOptions) {
      super.postMessage(message, transfer as Transferable[])
      // Afterwards a buffer that was handed over is empty here.
      talk.mostPosted = Math.max(talk.mostPosted, new Parcel(message).bytes)
    }
  }
}
