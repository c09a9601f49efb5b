import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import { dropFiles, openRow, openSection } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/**
 * Each writes numbers its own way: `0.2` or `0,2`; groups by commas, points, apostrophes or spaces
 * of three kinds.
 */
const LOCALES = [
  ['en-GB', '0.28'],
  ['en-US', '0.28'],
  ['de-DE', '0,28'],
  ['de-CH', '0.28'],
  ['fr-FR', '0,28'],
  ['sv-SE', '0,28'],
  ['pl-PL', '0,28'],
] as const

describe('a number typed in a browser of', () => {
  test.each(LOCALES)(
    '%s is taken with either decimal mark, and comes back',
    async (locale, shown) => {
      await withApp(
        async ({ page }) => {
          await dropFiles(page, [{ name: 'bar.stl', bytes: writeStlBinary(box(20, 8, 6)) }])
          await openRow(page, 'bar')
          const layer = page.getByRole('textbox', { name: 'Layer height' })
          for (const typed of ['0.28', '0,28']) {
            await layer.fill('1')
            await layer.press('Tab')
            await layer.fill(typed)
            await layer.press('Tab')
            await expect.poll(() => layer.inputValue()).toBe(shown)
            await expect.poll(() => layer.getAttribute('aria-invalid')).toBeNull()
          }
          // Refused whole, and left as typed; what held still holds.
          await layer.fill('0,2,8')
          await layer.press('Tab')
          const alert = page.getByRole('alert').filter({ hasText: 'Takes' })
          await alert.waitFor()
          const lowest = shown.replace('28', '02')
          await expect
            .poll(async () => (await alert.innerText()).replaceAll(/\s/g, ' '))
            .toContain(`${lowest} to 2 mm`)
          await expect.poll(() => layer.inputValue()).toBe('0,2,8')
          await expect.poll(() => layer.getAttribute('aria-invalid')).toBe('true')
          await layer.fill('5')
          await layer.press('Tab')
          await expect.poll(() => layer.inputValue()).toBe('5')
          await layer.press('Escape')
          await expect.poll(() => layer.inputValue()).toBe(shown)
          // Finer than the box shows what is worked out, and negative.
          const fine = shown.replace('28', '25')
          const balance = await openSection(page, 'Balance')
          await balance.getByRole('button', { name: 'Place one piece' }).click()
          const forward = balance.getByRole('textbox', { name: 'Forward' })
          const left = balance.getByRole('textbox', { name: 'Left' })
          await forward.fill('0,25')
          await left.fill('-12.5')
          await left.press('Enter')
          const minus = (-1).toLocaleString(locale)[0] ?? ''
          const places = [fine, `${minus}12${shown[1]}5`]
          expect([await forward.inputValue(), await left.inputValue()]).toEqual(places)
          await page.getByText('Saved on this device').waitFor()
          await page.reload()
          await balance.getByRole('button', { name: 'bar 1' }).click()
          expect([await forward.inputValue(), await left.inputValue()]).toEqual(places)
        },
        { locale },
      )
    },
  )
})
