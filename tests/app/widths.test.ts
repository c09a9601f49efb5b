import type { Page } from 'playwright'
import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import {
  dropMeshes,
  goToSheet,
  loadSandpiper,
  openRow,
  openSection,
  waitForCensus,
} from '../support/page.ts'

/**
 * Words of which one part stands on another line than the rest, and how far the page reaches beyond
 * its edge.
 */
function faultsSeen(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found: string[] = []
    const { scrollWidth, clientWidth } = document.documentElement
    if (scrollWidth > clientWidth)
      found.push(`the page is ${scrollWidth - clientWidth} px too wide`)
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    const range = document.createRange()
    for (let node = texts.nextNode(); node !== null; node = texts.nextNode()) {
      const text = node.textContent ?? ''
      range.selectNodeContents(node)
      // What stands on one line, or is not shown, breaks nothing: most of the page.
      if (range.getClientRects().length < 2) continue
      for (const { 0: word, index } of text.matchAll(/[\p{L}\p{N}]+/gu)) {
        range.setStart(node, index)
        range.setEnd(node, index + word.length)
        const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)))
        if (lines.size > 1) found.push(`“${word}” is broken`)
      }
    }
    return found
  })
}

/** Charts learn of another width a moment after the page; what stays is a fault. */
async function expectFaultless(page: Page, of: string, widths: readonly number[]): Promise<void> {
  for (const widthPx of widths) {
    await page.setViewportSize({ width: widthPx, height: 900 })
    const message = `${of} at ${widthPx} px`
    await expect.poll(() => faultsSeen(page), { message }).toEqual([])
  }
}

/** Widths in CSS px, both ends included. */
function widthsBetween(low: number, high: number, step: number): readonly number[] {
  return Array.from({ length: Math.floor((high - low) / step) + 1 }, (_, i) => low + i * step)
}

/** Brings a sheet up whole. */
type Turn = (page: Page) => Promise<unknown>

/** Frame and Part, where most is edited, every 20 px; of the others every second width. */
const TURNS: readonly (readonly [name: string, every: 1 | 2, turn: Turn])[] = [
  ['frame', 1, (page) => goToSheet(page, 'frame')],
  ['part', 1, (page) => openRow(page, 'Pivot collar')],
  ['choose', 2, (page) => openSection(page, 'Ways to lie')],
  ['carbon', 2, (page) => openSection(page, 'Carbon twin')],
  ['aircraft', 2, (page) => openSection(page, 'Flight')],
  ['bench', 2, (page) => openSection(page, 'Spares')],
]

test.each([
  ['from 320 to 1,920 px', 1, widthsBetween(320, 1920, 20)],
  // At 200 % a window of 640 to 1,920 px has half as many CSS px.
  ['at 200 % zoom', 2, widthsBetween(320, 960, 20)],
] as const)(
  'no word is broken and nothing reaches beyond the edge of any sheet %s',
  { timeout: 240_000 },
  async (_, deviceScaleFactor, widths) => {
    await withApp(
      async ({ page }) => {
        await loadSandpiper(page)
        for (const [name, every, turn] of TURNS) {
          await page.setViewportSize({ width: 1280, height: 900 })
          await turn(page)
          const tried = widths.filter((_width, i) => i % every === 0)
          await expectFaultless(page, name, tried)
        }
      },
      {
        locale: 'en-GB',
        deviceScaleFactor,
        viewport: { width: 1280, height: 900 },
        hasCounted: true,
      },
    )
  },
)

test('a name of one long word leaves every sheet as wide as its window', async () => {
  await withApp(
    async ({ page }) => {
      const name = 'FrontArmLeftWithInsertsAndHolesDrilledByHand'.repeat(4)
      await dropMeshes(page, { [name]: box(100, 20, 6), deck: box(60, 60, 3) })
      await waitForCensus(page)
      for (const sheet of ['frame', 'part', 'choose', 'carbon', 'aircraft', 'bench'] as const) {
        await goToSheet(page, sheet)
        await page.locator('.title-block').waitFor()
        for (const width of [1280, 360]) {
          await page.setViewportSize({ width, height: 900 })
          const tooWide = async () =>
            (await faultsSeen(page)).filter((words) => words.startsWith('the page'))
          await expect.poll(tooWide, { message: `${sheet} at ${width} px` }).toEqual([])
        }
      }
    },
    { locale: 'en-GB', viewport: { width: 1280, height: 900 } },
  )
})

test('a word in two lines, and a page too wide, would be seen', async () => {
  await withApp(
    async ({ page }) => {
      await page.evaluate(() => {
        const words = document.createElement('p')
        words.textContent = 'landing gear unbroken'
        Object.assign(words.style, { width: '5ch', overflowWrap: 'anywhere', minWidth: '0' })
        const wide = document.createElement('div')
        Object.assign(wide.style, { width: '1400px', height: '1px' })
        document.body.append(words, wide)
      })
      const seen = await faultsSeen(page)
      expect(seen).toContain('“landing” is broken')
      expect(seen).not.toContain('“gear” is broken')
      expect(seen.join()).toMatch(/the page is \d+ px too wide/)
    },
    { viewport: { width: 1280, height: 900 } },
  )
})
