import { readFileSync } from 'node:fs'
import type { Locator, Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import {
  demoFile,
  dropFiles,
  goToSheet,
  gramsOf,
  gramsWordsInBlock,
  openRow,
  rowOf,
  totalGrams,
  waitForCensus,
} from '../support/page.ts'

const SANDPIPER = JSON.parse(readFileSync('public/demo/sandpiper.json', 'utf8')) as {
  readonly story: string
  readonly parts: readonly { readonly file: string }[]
}
/** Every mesh file of the tricopter. */
const MESHES = SANDPIPER.parts.map(({ file }) => file)
/** The last sentence of its story. */
const STORY_ENDS = SANDPIPER.story.split('. ').at(-1) ?? ''

const LOCALE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }
const COUNTED = { ...LOCALE, hasCounted: true }

describe('the ledger', { timeout: 240_000 }, () => {
  test('takes every mesh of the demo in one drop and sums the rows to the total', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, MESHES.map(demoFile))
      await page
        .locator('tr.row')
        .nth(MESHES.length - 1)
        .waitFor()
      await waitForCensus(page)
      await expect.poll(() => page.locator('tr.row').count()).toBe(MESHES.length)
      const figures = await page.locator('tr.row .cell-grams .figure').allInnerTexts()
      const sum = figures.reduce((all, text) => all + Number(text.replaceAll(/[^\d.]/g, '')), 0)
      // Rows and total are rounded to 0.1 g each.
      const total = await totalGrams(page)
      expect(total).toBeLessThan(999.95)
      expect(Math.abs(total - sum)).toBeLessThan(0.05 * (MESHES.length + 1) + 1e-6)
      await expect
        .poll(() => page.locator('.row-total .cell-grams .figure').innerText())
        .toContain(total.toFixed(1))
    }, LOCALE)
  })

  test('follows the infill slider as it is dragged, row and total, and takes the drag as one undo step', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, ['front-arm.stl', 'lower-deck.stl'].map(demoFile))
      await waitForCensus(page)
      const panel = await openRow(page, 'front arm')
      const rowBefore = await gramsOf(page, 'front arm')
      await expect.poll(() => blockGrams(page)).toBe(rowBefore)
      const totalBefore = await totalGrams(page)

      const track = panel.locator('.slider-track')
      const thumb = panel.locator('.slider-thumb')
      await track.scrollIntoViewIfNeeded()
      const from = await centreOf(thumb)
      const box = await boxOf(track)
      await page.mouse.move(from.x, from.y)
      await page.mouse.down()
      await page.mouse.move(box.x + box.width * 0.7, from.y, { steps: 4 })
      // The head goes with the hand, the title block a moment after.
      await expect.poll(() => totalGrams(page)).toBeGreaterThan(totalBefore)
      const totalMidway = await totalGrams(page)
      await expect.poll(() => blockGrams(page)).toBeGreaterThan(rowBefore)
      const midway = await blockGrams(page)
      // Nothing is counted anew for infill: no row goes back to work.
      expect(await page.locator('.rough-words').count()).toBe(0)
      await page.mouse.move(box.x + box.width * 0.95, from.y, { steps: 4 })
      await expect.poll(() => totalGrams(page)).toBeGreaterThan(totalMidway)
      await expect.poll(() => blockGrams(page)).toBeGreaterThan(midway)
      await page.mouse.up()
      await goToSheet(page, 'frame')
      await expect.poll(() => gramsOf(page, 'front arm')).toBeGreaterThan(midway)
      const heaviest = await gramsOf(page, 'front arm')
      await openRow(page, 'front arm')
      await expect.poll(() => blockGrams(page)).toBe(heaviest)
      await goToSheet(page, 'frame')
      expect(await page.locator('.row-working').count()).toBe(0)

      await page.getByRole('button', { name: /^Undo: change infill/ }).click()
      await expect.poll(() => gramsOf(page, 'front arm')).toBe(rowBefore)
      await expect.poll(() => totalGrams(page)).toBe(totalBefore)
    }, LOCALE)
  })

  test('tells infill between two whole shares alike by slider and box, and goes on by whole ones', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [demoFile('front-arm.stl')])
      await waitForCensus(page)
      const panel = await openRow(page, 'front arm')
      const field = panel.getByRole('textbox', { name: 'Infill share' })
      const slider = panel.getByRole('slider', { name: 'Infill' })
      for (const [typed, key, next] of [
        ['22.5', 'ArrowRight', '23'],
        ['22.5', 'ArrowLeft', '22'],
        ['22.75', 'ArrowLeft', '22'],
        ['40', 'ArrowRight', '41'],
      ] as const) {
        await field.fill(typed)
        await field.press('Enter')
        expect(await slider.inputValue()).toBe(typed)
        expect(await slider.getAttribute('aria-valuetext')).toBe(typed)
        await slider.press(key)
        await expect.poll(() => field.inputValue()).toBe(next)
        expect(await slider.getAttribute('aria-valuetext')).toBe(next)
      }
    }, LOCALE)
  })

  test('takes infill as a number too, and Ctrl+Z puts it back', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [demoFile('front-arm.stl')])
      await waitForCensus(page)
      const panel = await openRow(page, 'front arm')
      const before = await gramsOf(page, 'front arm')
      const field = panel.getByRole('textbox', { name: 'Infill share' })
      await field.fill('90')
      await field.press('Enter')
      await expect.poll(() => gramsOf(page, 'front arm')).toBeGreaterThan(before)
      await expect.poll(() => panel.getByRole('slider', { name: 'Infill' }).inputValue()).toBe('90')
      await expect.poll(() => totalGrams(page)).toBe(await gramsOf(page, 'front arm'))

      await goToSheet(page, 'frame')
      await rowOf(page, 'front arm').getByRole('link').first().focus()
      await page.keyboard.press('Control+z')
      await expect.poll(() => gramsOf(page, 'front arm')).toBe(before)
    }, LOCALE)
  })

  test('tells what the demo is about, until dismissed, and which part fits the bed only on the diagonal', async () => {
    await withApp(async ({ page }) => {
      await page.getByRole('button', { name: /Load Sandpiper/ }).click()
      const story = page.getByRole('complementary', { name: 'About this sample aircraft' })
      await story.getByText('Invented sample aircraft.').waitFor()
      await waitForCensus(page)
      // At first only what it is; the rest when asked for.
      expect(await story.innerText()).not.toContain(STORY_ENDS)
      await story.getByRole('button', { name: 'Read all' }).click()
      await story.getByText(STORY_ENDS).waitFor()
      const panel = await openRow(page, 'Tail boom')
      await panel.getByText('Fits the bed of 220 × 220 × 240 mm only on the diagonal').waitFor()
      expect(await page.getByText('does not fit the bed').count()).toBe(0)

      await goToSheet(page, 'frame')
      await story.getByRole('button', { name: 'Dismiss the story of the sample' }).click()
      await story.waitFor({ state: 'detached' })
    }, COUNTED)
  })

  test('gives ticked parts a role, and sorts by mass', async () => {
    await withApp(async ({ page }) => {
      const names = ['damper-cup.stl', 'front-arm.stl', 'gps-mast.stl']
      await dropFiles(page, names.map(demoFile))
      await page.locator('tr.row').nth(2).waitFor()
      await waitForCensus(page)
      await page.getByRole('checkbox', { name: 'Tick all parts' }).focus()
      await page.keyboard.press('Space')
      await page.getByRole('button', { name: /Recipe for/ }).click()
      await page.getByRole('option', { name: 'Arm' }).click()
      const recipes = () => page.locator('tr.row .row-recipe').allInnerTexts()
      await expect
        .poll(async () => (await recipes()).map((text) => text.includes('75 % grid')))
        .toEqual([true, true, true])

      await page.getByRole('button', { name: 'Order by Mass' }).click()
      const inOrder = async (): Promise<boolean> => {
        const words = await page.locator('tr.row .cell-grams .figure').allInnerTexts()
        const grams = words.map((text) => Number(text.replaceAll(/[^\d.]/g, '')))
        return grams.every((one, i) => i === 0 || one <= grams[i - 1]!)
      }
      await expect.poll(inOrder).toBe(true)
    }, LOCALE)
  })
})

async function blockGrams(page: Page): Promise<number> {
  return Number(await gramsWordsInBlock(page))
}

async function boxOf(place: Locator) {
  const box = await place.boundingBox()
  if (box === null) throw new Error('Not on screen.')
  return box
}

async function centreOf(place: Locator) {
  const box = await boxOf(place)
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}
