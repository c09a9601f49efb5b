import type { Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { sharedApp } from '../support/app.ts'
import { breaches } from '../support/breaches.ts'
import {
  chooseFromMenu,
  dropFiles,
  goToSheet,
  loadSandpiper,
  openPrinter,
  openRow,
  openSection,
  textFile,
} from '../support/page.ts'

const widthOf = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth)

/** Every sheet below the list with its last section, so that all of it is drawn. */
const SHEETS = [
  ['choose', 'Ways to lie'],
  ['carbon', 'Carbon twin'],
  ['aircraft', 'Flight'],
  ['bench', 'Spares'],
] as const

/**
 * Nothing is wrong in light, and nothing of what colours decide in dark, which changes nothing
 * else.
 *
 * @param place what has come since the last look; left out, the whole page.
 */
async function expectClean(page: Page, of: string, place?: string): Promise<void> {
  const where = place === undefined ? {} : { place }
  expect(await breaches(page, where), `${of}, light`).toEqual([])
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await breaches(page, { ...where, colorsOnly: true }), `${of}, dark`).toEqual([])
  await page.emulateMedia({ colorScheme: 'light' })
}

describe.each([
  ['wide', { width: 1280, height: 900 }],
  ['phone', { width: 360, height: 740 }],
] as const)('on a %s page', { timeout: 500_000 }, (size, viewport) => {
  const onPage = sharedApp((page) => page.getByRole('heading', { level: 1 }).waitFor(), {
    locale: 'en-GB',
    colorScheme: 'light',
    viewport,
    hasCounted: true,
  })

  test('axe finds nothing: empty, on every sheet, failed, in a dialog', async () => {
    await onPage(async ({ page }) => {
      await expectClean(page, 'empty')
      await loadSandpiper(page)
      await expectClean(page, 'frame')
      for (const [sheet, last] of SHEETS) {
        await openSection(page, last)
        if (sheet === 'aircraft') {
          await page.getByRole('button', { name: 'Find a screw length' }).click()
        }
        if (sheet === 'carbon') {
          await page.getByRole('button', { name: 'SVG outline of Lower deck' }).waitFor()
        }
        await expectClean(page, sheet)
        await expect
          .poll(() => widthOf(page), { message: sheet })
          .toBeLessThanOrEqual(viewport.width)
      }
      await goToSheet(page, 'frame')
      await dropFiles(page, [textFile('notes.txt', 'not a mesh')])
      await page.getByRole('region', { name: 'Files left out' }).waitFor()
      await openRow(page, 'GPS mast')
      await page.locator('.part-panel .part-drawing').waitFor()
      await page.locator('.section-drawing').first().waitFor()
      await expectClean(page, 'part, and a file left out')
      await page.getByRole('button', { name: 'In 3D' }).click()
      await page.locator('.view3d, .part-view .thumbnail').first().waitFor()
      await expectClean(page, 'part in 3D', '.part-sheet')
      // A part with something to mend, and a row ticked.
      await openRow(page, 'Pivot collar')
      await page.getByRole('button', { name: 'Take it as inches' }).waitFor()
      await expectClean(page, 'part to mend', '.part-sheet')
      await goToSheet(page, 'frame')
      await page.getByRole('checkbox', { name: 'Tick GPS mast' }).focus()
      await page.keyboard.press('Space')
      await page.getByRole('toolbar', { name: 'Ticked parts' }).waitFor()
      await expectClean(page, 'ticked')
      await page.getByRole('button', { name: /^Materials/ }).click()
      await page.getByRole('button', { name: 'Edit PETG', exact: true }).click()
      await expectClean(page, 'materials')
      await page.keyboard.press('Escape')
      await openPrinter(page)
      await page.getByRole('button', { name: 'Show habits' }).click()
      await page.getByRole('img', { name: /Infill lines from above/ }).waitFor()
      await expectClean(page, 'printer', '[role=dialog]')
      await page.keyboard.press('Escape')
      await chooseFromMenu(page, 'New frame')
    })
  })

  if (size !== 'phone') return
  test('nothing reaches beyond its edge, the total stays', async () => {
    await onPage(async ({ page }) => {
      await loadSandpiper(page)
      for (const sheet of ['frame', 'choose', 'carbon', 'aircraft', 'bench'] as const) {
        await goToSheet(page, sheet)
        await expect.poll(() => widthOf(page), { message: sheet }).toBeLessThanOrEqual(360)
      }
      await openRow(page, 'Front arm')
      await expect.poll(() => widthOf(page)).toBeLessThanOrEqual(360)
      await page.mouse.move(180, 400)
      await page.mouse.wheel(0, 1500)
      await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(400)
      // The total stays in view.
      expect(await page.locator('.total-grams').boundingBox()).toMatchObject({
        x: expect.any(Number),
      })
      const top = async () => (await page.locator('.totals').boundingBox())?.y
      await expect.poll(top).toBeCloseTo(0, 0)
    })
  })
})
