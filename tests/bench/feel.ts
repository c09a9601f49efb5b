import { chromium, type Page } from 'playwright'
import { browserFlags, findBrowser } from '../../src/tools/browser.mjs'
import { createAppServer, listen } from '../../src/tools/serve.mjs'
import { watchMainThread } from '../support/mainThread.ts'
import { buildApp } from './buildApp.ts'
import { fixedWork } from './fixedWork.ts'
import { inputToPaint, type PaintTimes } from './inputToPaint.ts'
import { writeBalls } from './pageTimes.ts'

export interface Feel {
  /** What the same fixed piece of work takes this page on this machine now, processor time, ms. */
  readonly fixedMs: number
  /** Longest task of the main thread while something is done on the sample, processor time, ms. */
  readonly longestMs: Readonly<Record<string, number>>
  /** By what was pressed. */
  readonly paint: Readonly<Record<string, PaintTimes>>
  /** From the first figures of the sample to its picture, ms. */
  readonly pictureMs: number
}

const SHEETS = ['part/2', 'choose', 'carbon', 'aircraft', 'bench', 'frame']

/**
 * Turns, drags and opens what a hand would on the built page, prices many triangles, and traces how
 * long each keeps input waiting.
 */
export async function feel(folder: string): Promise<Feel> {
  const server = createAppServer(buildApp(folder))
  const url = `http://127.0.0.1:${await listen(server, 0)}/`
  const executablePath = findBrowser()
  const browser = await chromium.launch({
    args: browserFlags(),
    ...(executablePath === undefined ? {} : { executablePath }),
  })
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
    const page = await context.newPage()
    await page.goto(url)
    const fixedMs = await fixedWork(page)
    const watching = page.evaluate(watchPicture)
    await page.getByRole('button', { name: /Load Sandpiper/ }).click()
    const pictureMs = await watching
    await page.locator('.rough-words').waitFor({ state: 'detached' })
    await page.locator('.item-number').first().waitFor()
    const found: Record<string, number> = {}
    const clock = async (name: string, act: () => Promise<void>): Promise<void> => {
      const tasks = await watchMainThread(page, act)
      found[name] = Math.max(...tasks.map(({ threadMs }) => threadMs))
    }
    await clock('turn', async () => {
      await drag(page, '.assembly-sheet svg', 240)
    })
    for (const sheet of SHEETS) {
      await clock(`open ${sheet}`, async () => {
        await page.evaluate((hash) => {
          location.hash = hash
        }, `#/${sheet}`)
        await page.locator('.drawn-sheet:not(.sheet-coming, .order-paper) .title-block').waitFor()
        await page.waitForTimeout(1500)
      })
    }
    await page.evaluate(() => {
      location.hash = '#/part/2'
    })
    await page.locator('.slider-thumb').waitFor()
    await clock('drag infill', async () => {
      await drag(page, '.slider-thumb', 90)
    })
    const paint = await inputToPaint(page)
    const another = await browser.newContext({ viewport: { width: 1440, height: 900 } })
    const busy = await another.newPage()
    await busy.goto(url)
    await busy.locator('input[type=file]').first().waitFor({ state: 'attached' })
    const tasks = await watchMainThread(busy, async () => {
      const balls = writeBalls(folder)
      await busy
        .locator('input[type=file]')
        .first()
        .setInputFiles([...balls])
      await busy
        .locator('tr.row')
        .nth(balls.length - 1)
        .waitFor()
      await busy.locator('.rough-words').waitFor({ state: 'detached', timeout: 120_000 })
    })
    found['price half a million triangles'] = Math.max(...tasks.map(({ threadMs }) => threadMs))
    return { fixedMs, longestMs: found, paint, pictureMs }
  } finally {
    await browser.close()
    server.close()
    server.closeAllConnections()
  }
}

/** Runs in the page: by its own clock, so that the driver's delays do not count. */
function watchPicture(): Promise<number> {
  return new Promise((resolve) => {
    let figuresAt: number | null = null
    const timer = setInterval(() => {
      if (document.querySelector('tr.row .cell-grams .figure') !== null)
        figuresAt ??= performance.now()
      if (figuresAt === null || document.querySelector('.piece-outline') === null) return
      clearInterval(timer)
      resolve(performance.now() - figuresAt)
    }, 5)
  })
}

async function drag(page: Page, selector: string, byPx: number): Promise<void> {
  const box = await page.locator(selector).boundingBox()
  if (box === null) throw new Error(`${selector} is not on screen.`)
  const x = box.x + box.width / 2
  const y = box.y + box.height / 2
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + byPx, y, { steps: 30 })
  await page.mouse.up()
  await page.waitForTimeout(1000)
}
