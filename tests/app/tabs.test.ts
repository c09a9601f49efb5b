import type { Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { demoFile, dropFiles, openRow, waitForCensus } from '../support/page.ts'
import { brokenMeshes } from '../support/storedMeshes.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }

const nameField = (page: Page) => page.getByRole('textbox', { name: 'Name of the frame' })
const nameOf = (page: Page) => nameField(page).inputValue()
const notice = (page: Page) => page.getByRole('alert', { name: 'Open in another tab' })

async function rename(page: Page, name: string): Promise<void> {
  await nameField(page).fill(name)
  await nameField(page).press('Enter')
}

/** A second tab of the same visitor. */
async function secondTab(page: Page, url: string): Promise<Page> {
  const tab = await page.context().newPage()
  await tab.goto(url)
  await tab.locator('tr.row').first().waitFor()
  return tab
}

describe('two tabs on one frame', { timeout: 300_000 }, () => {
  test('the second is told, changes nothing, and can take over; the first then says so', async () => {
    await withApp(async ({ page, url }) => {
      await dropFiles(page, [demoFile('damper-cup.stl')])
      await waitForCensus(page)
      await rename(page, 'Shared')
      const second = await secondTab(page, url)
      await notice(second).waitFor()
      await expect.poll(() => notice(second).innerText()).toContain('Shared is open in another tab')
      expect(await notice(page).count()).toBe(0)

      await rename(second, 'From the second')
      await second.getByText('Nothing was changed').waitFor()
      await expect.poll(() => nameOf(second)).toBe('Shared')

      // Not yet written when the second tab takes over: it must not be lost.
      await rename(page, 'Shared, changed last')
      await notice(second).getByRole('button', { name: 'Take it over' }).click()
      await notice(second).waitFor({ state: 'detached' })
      await expect.poll(() => nameOf(second)).toBe('Shared, changed last')
      await notice(page).waitFor()
      await expect.poll(() => notice(page).innerText()).toContain('was taken over by another tab')
      await page.getByText('Read only in this tab').waitFor()

      const panel = await openRow(page, 'damper cup')
      const field = panel.getByRole('textbox', { name: 'Infill share' })
      const before = await field.inputValue()
      await field.fill('77')
      await field.press('Enter')
      await page.getByText('Nothing was changed').waitFor()
      await expect.poll(() => field.inputValue()).toBe(before)

      await rename(second, 'By the second')
      await second.getByText('Saved on this device').waitFor()
      await notice(page).getByRole('button', { name: 'Take it over' }).click()
      await notice(page).waitFor({ state: 'detached' })
      await expect.poll(() => nameOf(page)).toBe('By the second')
      await notice(second).waitFor()
    }, LOCALE)
  })

  test('the second can go on with a copy, and both are kept', async () => {
    await withApp(async ({ page, url }) => {
      await dropFiles(page, [demoFile('damper-cup.stl')])
      await waitForCensus(page)
      await rename(page, 'Original')
      const second = await secondTab(page, url)
      await notice(second).getByRole('button', { name: 'Open a copy' }).click()
      await notice(second).waitFor({ state: 'detached' })
      await expect.poll(() => nameOf(second)).toBe('Original (2)')
      await rename(second, 'Copy')
      await rename(page, 'Original, changed')
      for (const tab of [page, second]) await tab.getByText('Saved on this device').waitFor()
      expect(await notice(page).count()).toBe(0)

      // Each tab comes back to its own frame.
      await second.reload()
      await page.reload()
      await second.locator('tr.row').first().waitFor()
      await page.locator('tr.row').first().waitFor()
      await expect.poll(() => nameOf(second)).toBe('Copy')
      await expect.poll(() => nameOf(page)).toBe('Original, changed')
      expect(await notice(page).count()).toBe(0)
      expect(await brokenMeshes(page)).toEqual([])
    }, LOCALE)
  })

  test('when the first is closed, the frame is free again', async () => {
    await withApp(async ({ page, url }) => {
      await dropFiles(page, [demoFile('damper-cup.stl')])
      await waitForCensus(page)
      await page.getByText('Saved on this device').waitFor()
      const second = await secondTab(page, url)
      await notice(second).waitFor()
      await page.close()
      await second.reload()
      await second.locator('tr.row').first().waitFor()
      expect(await notice(second).count()).toBe(0)
      await rename(second, 'Mine now')
      await expect.poll(() => nameOf(second)).toBe('Mine now')
    }, LOCALE)
  })

  test('a page without locks still writes over nothing', async () => {
    await withApp(async ({ page, url }) => {
      // As on a page served over plain http.
      await page.context().addInitScript(() => {
        Object.defineProperty(Navigator.prototype, 'locks', { value: undefined })
      })
      await page.reload()
      await dropFiles(page, [demoFile('damper-cup.stl')])
      await waitForCensus(page)
      await rename(page, 'First')
      await page.getByText('Saved on this device').waitFor()
      const second = await secondTab(page, url)
      await rename(second, 'By the second')
      await second.getByText('Saved on this device').waitFor()
      await rename(page, 'By the first')
      await notice(page).waitFor()
      await expect.poll(() => notice(page).innerText()).toContain('was changed in another tab')
      await notice(page).getByRole('button', { name: 'Keep this as a copy' }).click()
      await page.getByText('Saved on this device').waitFor()
      await expect.poll(() => nameOf(page)).toBe('By the first (2)')
      await second.reload()
      await second.locator('tr.row').first().waitFor()
      await expect.poll(() => nameOf(second)).toBe('By the second')
    }, LOCALE)
  })
})
