import type { Page } from 'playwright'

/** A task of the page's main thread, ms. */
export interface MainTask {
  readonly wallMs: number
  /**
   * Processor time the thread itself spent; what it waited for a core, behind other programs, is
   * left out.
   */
  readonly threadMs: number
}

interface TraceEvent {
  readonly name: string
  readonly pid: number
  readonly tid: number
  /** Microseconds. */
  readonly dur?: number
  readonly tdur?: number
}

const MARK = 'watch the main thread'

/** Records every task of the page's main thread while `act` runs, by the browser's own tracing. */
export async function watchMainThread(
  page: Page,
  act: () => Promise<void>,
): Promise<readonly MainTask[]> {
  const browser = page.context().browser()
  if (browser === null) throw new Error('The page belongs to no browser that could be traced.')
  const session = await browser.newBrowserCDPSession()
  const events: TraceEvent[] = []
  session.on('Tracing.dataCollected', ({ value }) => {
    for (const event of value) events.push(event as unknown as TraceEvent)
  })
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve))
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel', 'blink.user_timing'] },
  })
  // Tells this page's thread from those of other pages and workers.
  await page.evaluate((mark) => performance.mark(mark), MARK)
  await act()
  await session.send('Tracing.end')
  await complete
  await session.detach()
  const thread = events.find(({ name }) => name === MARK)
  if (thread === undefined) throw new Error('The trace does not hold the page’s main thread.')
  return events.flatMap(({ name, pid, tid, dur, tdur }) =>
    pid === thread.pid && tid === thread.tid && name.endsWith('::RunTask') && tdur !== undefined
      ? [{ wallMs: (dur ?? 0) / 1000, threadMs: tdur / 1000 }]
      : [],
  )
}
