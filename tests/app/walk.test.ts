import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { demoFile, dropFiles, goToSheet, totalGrams, waitForCensus } from '../support/page.ts'
import { readPdf } from '../support/readPdf.ts'

test(
  'a stranger gets from three meshes to a priced frame, tries infill, and prints it',
  { timeout: 240_000 },
  async () => {
    await withApp(
      async ({ page }) => {
        await dropFiles(page, ['front-arm.stl', 'lower-deck.stl', 'damper-cup.stl'].map(demoFile))
        await page.locator('tr.row').nth(2).waitFor()
        await waitForCensus(page)
        const before = await totalGrams(page)
        expect(before).toBeGreaterThan(20)
        await expect
          .poll(() => page.locator('.total-cost .total-figure').innerText())
          .toMatch(/\d\.\d\d/)

        await goToSheet(page, 'choose')
        await page.getByRole('button', { name: 'Take 80 % infill' }).click()
        await expect.poll(() => totalGrams(page)).toBeGreaterThan(before + 1)
        await page.keyboard.press('Control+z')
        await expect.poll(() => totalGrams(page)).toBe(before)

        await goToSheet(page, 'frame')
        await page.locator('.item-number').nth(2).waitFor()
        const pages = await readPdf(await page.pdf({ format: 'A4', landscape: true }))
        expect(pages).toHaveLength(1)
        expect(pages[0]?.text).toContain(before.toFixed(1))
        for (const name of ['front arm', 'lower deck', 'damper cup'])
          expect(pages[0]?.text).toContain(name)
      },
      { locale: 'en-GB', viewport: { width: 1440, height: 900 } },
    )
  },
)
