import axe from 'axe-core'
import type { Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import {
  dropFiles,
  goToSheet,
  loadSandpiper,
  openPrinter,
  openRow,
  openSection,
  textFile,
} from '../support/page.ts'

/** Breaches of WCAG 2.1 A and AA and of axe's own good practice, as one readable line each. */
async function breaches(page: Page): Promise<string[]> {
  // A script tag would be refused by the content policy; this goes through the debugger.
  await page.evaluate(axe.source)
  const found = await page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as { axe: typeof axe }).axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'],
    })
    return violations.map(({ id, help, nodes }) => ({ id, help, html: nodes.map((n) => n.html) }))
  })
  return found.map(({ id, help, html }) => `${id}: ${help}: ${html.slice(0, 3).join(' | ')}`)
}

const widthOf = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth)

const SIZES = { wide: { width: 1280, height: 900 }, phone: { width: 360, height: 740 } }

describe.each(['light', 'dark'] as const)('in %s', { timeout: 120_000 }, (colorScheme) => {
  test.each(['wide', 'phone'] as const)(
    'axe finds nothing on a %s page: empty, on every sheet, failed, in a dialog',
    async (size) => {
      await withApp(
        async ({ page }) => {
          await page.getByRole('heading', { level: 1 }).waitFor()
          expect(await breaches(page)).toEqual([])
          await loadSandpiper(page)
          expect(await breaches(page)).toEqual([])
          // The last section of each, so that all of the sheet is drawn.
          for (const last of ['Ways to lie', 'Carbon twin', 'Flight', 'Spares'] as const) {
            await openSection(page, last)
            expect(await breaches(page), last).toEqual([])
          }
          await goToSheet(page, 'frame')
          await dropFiles(page, [textFile('notes.txt', 'not a mesh')])
          await page.getByRole('region', { name: 'Files left out' }).waitFor()
          await openRow(page, 'GPS mast')
          await page.locator('.part-panel .part-drawing').waitFor()
          await page.locator('.section-drawing').first().waitFor()
          expect(await breaches(page)).toEqual([])
          await page.getByRole('button', { name: 'In 3D' }).click()
          await page.locator('.view3d, .part-view .thumbnail').first().waitFor()
          expect(await breaches(page)).toEqual([])
          // A part with something to mend, and a row ticked.
          await openRow(page, 'Pivot collar')
          await page.getByRole('button', { name: 'Take it as inches' }).waitFor()
          expect(await breaches(page)).toEqual([])
          await goToSheet(page, 'frame')
          await page.getByRole('checkbox', { name: 'Tick GPS mast' }).focus()
          await page.keyboard.press('Space')
          await page.getByRole('toolbar', { name: 'Ticked parts' }).waitFor()
          expect(await breaches(page)).toEqual([])
          await page.getByRole('button', { name: /^Materials/ }).click()
          await page.getByRole('button', { name: 'Edit PETG', exact: true }).click()
          expect(await breaches(page)).toEqual([])
          await page.keyboard.press('Escape')
          await openPrinter(page)
          await page.getByRole('button', { name: 'Show habits' }).click()
          await page.getByRole('img', { name: /Infill lines from above/ }).waitFor()
          expect(await breaches(page)).toEqual([])
        },
        { locale: 'en-GB', colorScheme, viewport: SIZES[size], hasCounted: true },
      )
    },
  )
})

test('nothing reaches beyond the edge of a 360 px phone', async () => {
  await withApp(
    async ({ page }) => {
      await loadSandpiper(page)
      for (const sheet of ['frame', 'choose', 'carbon', 'aircraft', 'bench'] as const) {
        await goToSheet(page, sheet)
        expect(await widthOf(page), sheet).toBeLessThanOrEqual(360)
      }
      await openRow(page, 'Front arm')
      expect(await widthOf(page)).toBeLessThanOrEqual(360)
      await page.mouse.move(180, 400)
      await page.mouse.wheel(0, 1500)
      await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(400)
      // The total stays in view.
      expect(await page.locator('.total-grams').boundingBox()).toMatchObject({
        x: expect.any(Number),
      })
      expect((await page.locator('.totals').boundingBox())?.y).toBeCloseTo(0, 0)
    },
    { locale: 'en-GB', viewport: { width: 360, height: 740 }, hasCounted: true },
  )
})
