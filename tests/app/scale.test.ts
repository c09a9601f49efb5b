import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import { dropMeshes, openSection, waitForCensus } from '../support/page.ts'

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true }

test.each([
  { locale: 'en-GB', mark: '.' },
  { locale: 'de-DE', mark: ',' },
  { locale: 'fr-FR', mark: ',' },
])(
  'piece after piece is weighed with the thumb, refused, taken back ($locale)',
  async ({ locale, mark }) => {
    await withApp(
      async ({ page }) => {
        const blocks = { bar: box(60, 12, 6), cup: box(20, 20, 10) }
        await dropMeshes(page, blocks)
        await waitForCensus(page)
        const section = await openSection(page, 'Weigh-in')
        await section.getByRole('button', { name: 'Piece by piece at the scale' }).click()
        const sheet = page.getByRole('dialog', { name: 'Weigh-in' })
        await sheet.getByText('0 of 2 on the scale').waitFor()
        await sheet.getByRole('img', { name: 'bar, drawn' }).waitFor()
        const reading = sheet.getByLabel('bar on the scale')
        const take = sheet.getByRole('button', { name: /^Take/ })
        const key = (name: string) => sheet.getByRole('button', { name, exact: true }).click()

        // Nothing, and zero, are refused.
        await take.click()
        await sheet.getByText('Type what the scale shows.').waitFor()
        await key('0')
        await take.click()
        await sheet.getByText('0 of 2 on the scale').waitFor()
        await key('Delete the last digit')
        // What is no number is refused whole and stands as typed.
        await reading.fill('12a3')
        await page.keyboard.press('Enter')
        await sheet.getByText(/This is not a number\. Takes 0[.,]01 to /).waitFor()
        await expect.poll(() => reading.inputValue()).toBe('12a3')
        await sheet.getByText('0 of 2 on the scale').waitFor()
        await reading.fill('')

        // What was reckoned, in the reader's own decimals; a tenth more is expected, ten times is
        // asked about.
        const words = await sheet.locator('.scale-mid-words').textContent()
        const reckoned = Number(words!.replace(/^\D*/, '').replace(',', '.'))
        const type = async (grams: number) => {
          for (const digit of grams.toFixed(1)) await key(digit === '.' ? mark : digit)
        }
        await type(reckoned * 10)
        await take.click()
        await sheet.getByText(/Far outside what is expected/).waitFor()
        await sheet.getByText('0 of 2 on the scale').waitFor()
        await reading.fill('')
        await type(reckoned + 0.1)
        await expect
          .poll(() => reading.inputValue())
          .toBe((reckoned + 0.1).toFixed(1).replace('.', mark))
        await sheet.getByText(/^inside /).waitFor()
        await take.click()

        // The next piece is there; the scale's mass is taken, and comes back with Undo.
        await sheet.getByRole('img', { name: 'cup, drawn' }).waitFor()
        await sheet.getByText('1 of 2 on the scale').waitFor()
        await sheet.locator('.weighed-picture li').waitFor()
        await sheet.getByText(/^Your PLA on this printer prints/).waitFor()
        await sheet.getByRole('button', { name: 'Undo' }).click()
        await sheet.getByText('0 of 2 on the scale').waitFor()

        // A keyboard does it too, and nothing is wider than the phone.
        await sheet.getByLabel('cup on the scale').fill(`4${mark}5`)
        await page.keyboard.press('Enter')
        await sheet
          .getByText(/on the scale$/)
          .first()
          .waitFor()
        const wide = await page.evaluate(() => document.documentElement.scrollWidth)
        expect(wide).toBeLessThanOrEqual(390)
        const size = (await take.boundingBox())!
        expect(size.height).toBeGreaterThanOrEqual(64)
        expect(size.y + size.height).toBeLessThanOrEqual(844.5)
        await sheet.getByRole('button', { name: 'Done' }).click()
        await sheet.waitFor({ state: 'detached' })
      },
      { ...PHONE, locale },
    )
  },
)
