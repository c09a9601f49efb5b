import type { Page } from 'playwright'

/** Times a phone or an old notebook is slower. */
const SLOWDOWN = 4
const PRESSES = 12

/** From a hand's press to the frame that shows what it did, ms, to the browser's 8. */
export interface PaintTimes {
  readonly middleMs: number
  readonly worstMs: number
}

/**
 * Presses keys and links as a hand would, on the sample with its layers counted, the page's thread
 * slowed down four times, and reads the browser's own event timing. Only presses slower than 16 ms
 * are told by it; others count as 16.
 */
export async function inputToPaint(page: Page): Promise<Readonly<Record<string, PaintTimes>>> {
  const session = await page.context().newCDPSession(page)
  await page.evaluate(() => {
    const seen: number[] = []
    Object.assign(window, { pressTimes: seen })
    new PerformanceObserver((list) => {
      for (const { name, duration } of list.getEntries())
        if (name === 'keydown' || name === 'click') seen.push(duration)
    }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit)
  })
  const found: Record<string, PaintTimes> = {}
  const clock = async (name: string, press: (turn: number) => Promise<void>): Promise<void> => {
    await page.evaluate(() => {
      const { pressTimes } = window as unknown as { pressTimes: number[] }
      pressTimes.length = 0
    })
    for (let turn = 0; turn < PRESSES; turn++) {
      await press(turn)
      await page.waitForTimeout(400)
    }
    const slow = await page.evaluate(
      () => (window as unknown as { pressTimes: number[] }).pressTimes,
    )
    const times = [...slow, ...Array.from({ length: PRESSES }, () => 16)]
      .sort((a, b) => b - a)
      .slice(0, PRESSES)
    found[name] = { middleMs: times[PRESSES / 2]!, worstMs: times[0]! }
  }
  await goTo(page, 'part/2')
  await page.locator('.slider-thumb').waitFor()
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN })
  await page.locator('.slider-thumb input').first().focus()
  await clock('infill by a key', (turn) =>
    page.keyboard.press(turn % 2 === 0 ? 'ArrowRight' : 'ArrowLeft'),
  )
  await goTo(page, 'frame')
  await page.locator('.assembly-sheet svg').focus()
  await clock('turn by a key', () => page.keyboard.press('ArrowRight'))
  await clock('choose an item', (turn) => page.locator(`[data-item="${(turn % 5) + 1}"]`).click())
  const sheets = ['Choose', 'Carbon', 'Aircraft', 'Bench', 'Frame']
  await clock('go to a sheet', (turn) =>
    page.locator('.sheet-links a', { hasText: sheets[turn % sheets.length]! }).click(),
  )
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 })
  return found
}

async function goTo(page: Page, sheet: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash
  }, `#/${sheet}`)
  await page.locator('.drawn-sheet:not(.sheet-coming, .order-paper) .title-block').waitFor()
  await page.waitForTimeout(1500)
}
