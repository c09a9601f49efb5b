import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { loadSandpiper, goToSheet } from '../support/page.ts'

test('the bench lays the frame into print runs, drawn, and divides them anew on choice', async () => {
  await withApp(
    async ({ page }) => {
      await loadSandpiper(page)
      await goToSheet(page, 'bench')
      const runs = page.getByRole('region', { name: 'Print runs' })
      const beds = runs.getByRole('img', { name: /^Bed of run / })
      await beds.first().waitFor()
      const few = await beds.count()
      // Every piece is drawn, and the sum told beside what the head counts.
      const laid = await runs.locator('.bed-piece').count()
      const words = (await page.locator('body').innerText()).replaceAll('\u00a0', ' ')
      const [, flying, spare] = /(\d+) pieces and (\d+) spare/.exec(words) ?? []
      expect(laid).toBe(Number(flying) + Number(spare))
      await runs.getByText(`in ${few} print runs, spares too`).waitFor()

      await runs.getByRole('button', { name: 'Divided for' }).click()
      await page.getByRole('option', { name: /^evenings/ }).click()
      await beds.nth(few).waitFor()
      expect(await runs.locator('.bed-piece').count()).toBe(laid)
      await page.getByRole('button', { name: /^Undo/ }).click()
      await beds.nth(few).waitFor({ state: 'detached' })

      // An edge of 60 mm leaves beds of 100: booms and arms go on none, and are told with both lengths.
      const edge = runs.getByLabel('Edge of the bed')
      await edge.fill('60')
      await edge.press('Enter')
      await runs
        .getByText(/is in no print run: too long/)
        .first()
        .waitFor()
    },
    { hasCounted: true },
  )
})
