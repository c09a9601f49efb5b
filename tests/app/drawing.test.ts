import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { loadSandpiper } from '../support/page.ts'

const WIDE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }

test('the sample is drawn with a number for every part that shows, and a number opens its part', async () => {
  await withApp(async ({ page }) => {
    await loadSandpiper(page)
    const numbers = page.locator('.item-number')
    await numbers.first().waitFor()
    // The collar, saved in inches, is too small to see: it is told below the drawing.
    expect(await numbers.count()).toBe(11)
    await page.getByText('Hidden here: 7 Pivot collar.').waitFor()
    expect(await page.locator('.piece-outline').count()).toBe(12)

    await page.getByRole('button', { name: 'Top', exact: true }).click()
    await page.locator('.assembly-view[aria-pressed="true"]', { hasText: 'Top' }).waitFor()
    const turned = page.getByRole('slider', { name: /Assembly drawing/ })
    await turned.focus()
    await page.keyboard.press('ArrowRight')
    expect(await turned.getAttribute('aria-valuetext')).toBe('turned 185°, 90° from above')

    // Once chooses, twice opens.
    const boom = page.getByRole('button', { name: /^2 Tail boom/ })
    await boom.click()
    await page.locator('.item-number[data-item="2"][aria-pressed="true"]').waitFor()
    await boom.click()
    await page.getByRole('group', { name: 'Settings of Tail boom' }).waitFor()
  }, WIDE)
})
