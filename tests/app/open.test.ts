import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'

test('the built app opens, says its name and complains of nothing', async () => {
  await withApp(async ({ page }) => {
    expect(await page.title()).toContain('Preweigh')
    await page.getByRole('heading', { level: 1 }).waitFor()
  })
})
