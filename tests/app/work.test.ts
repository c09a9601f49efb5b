import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import {
  chooseFromMenu,
  demoFile,
  dropFiles,
  goToSheet,
  gramsOf,
  loadSandpiper,
  openRow,
  rowOf,
  textFile,
  totalGrams,
  waitForCensus,
} from '../support/page.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1440, height: 900 } }
const COUNTED = { ...LOCALE, hasCounted: true }

describe('the work', { timeout: 240_000 }, () => {
  test('is still there after a reload', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, ['front-arm.stl', 'camera-tray.obj'].map(demoFile))
      await page.locator('tr.row').nth(1).waitFor()
      await waitForCensus(page)
      const panel = await openRow(page, 'front arm')
      const field = panel.getByRole('textbox', { name: 'Infill share' })
      await field.fill('64')
      await field.press('Enter')
      const total = await totalGrams(page)
      await page.getByText('Saved on this device').waitFor()

      await page.reload()
      await waitForCensus(page)
      await goToSheet(page, 'frame')
      await expect.poll(() => page.locator('tr.row').count()).toBe(2)
      await expect.poll(() => totalGrams(page)).toBe(total)
      await expect.poll(() => rowOf(page, 'front arm').innerText()).toContain('64 %')
    }, LOCALE)
  })

  test('goes into a file, and comes back out of it after a new frame was begun', async () => {
    await withApp(async ({ page }) => {
      await loadSandpiper(page)
      const total = await totalGrams(page)
      const arm = await gramsOf(page, 'Front arm')
      const downloading = page.waitForEvent('download')
      await page.getByRole('button', { name: 'Save file' }).click()
      const download = await downloading
      expect(download.suggestedFilename()).toBe('Sandpiper.preweigh')
      const saved = await download.path()

      await chooseFromMenu(page, 'New frame')
      await page.getByRole('heading', { name: /Weigh a printed airframe/ }).waitFor()

      const choosing = page.waitForEvent('filechooser')
      await page.getByRole('button', { name: 'Open saved frame' }).click()
      await (
        await choosing
      ).setFiles({
        name: 'Sandpiper.preweigh',
        mimeType: 'application/octet-stream',
        buffer: readFileSync(saved),
      })
      await waitForCensus(page)
      await expect.poll(() => page.locator('tr.row').count()).toBe(13)
      // The copy hears the first one's weighings besides its own: equal to three digits only.
      await expect
        .poll(async () => (await totalGrams(page)).toPrecision(3))
        .toBe(total.toPrecision(3))
      await expect.poll(() => gramsOf(page, 'Front arm')).toBe(arm)

      // On another device nothing else was weighed.
      await withApp(async ({ page: other }) => {
        await dropFiles(other, [{ name: 'Sandpiper.preweigh', bytes: readFileSync(saved) }])
        await other.locator('tr.row').nth(12).waitFor()
        await waitForCensus(other)
        await expect.poll(() => totalGrams(other)).toBe(total)
        await expect.poll(() => gramsOf(other, 'Front arm')).toBe(arm)
      }, COUNTED)
    }, COUNTED)
  })

  test('stays among the frames on this device when a demo takes its place on the page', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [demoFile('damper-cup.stl')])
      await waitForCensus(page)
      const total = await totalGrams(page)
      const name = page.getByRole('textbox', { name: 'Name of the frame' })
      await name.fill('Workshop pieces')
      await name.press('Enter')
      await chooseFromMenu(page, /Tern/)
      await page.locator('tr.row').nth(5).waitFor()
      await waitForCensus(page)

      await chooseFromMenu(page, 'Frames on this device')
      const list = page.getByRole('dialog')
      const line = list.locator('tr', { hasText: 'Workshop pieces' })
      await line.waitFor()
      await expect
        .poll(() => line.locator('.figures').allInnerTexts())
        .toEqual(['1', String(total)])
      await list.getByRole('button', { name: 'Duplicate Workshop pieces' }).click()
      await list.getByRole('button', { name: 'Rename Workshop pieces (2)' }).click()
      const field = list.getByRole('textbox', { name: /New name of/ })
      await field.fill('Spare set')
      await field.press('Enter')
      await list.getByRole('button', { name: 'Open Spare set' }).waitFor()
      await list.getByRole('button', { name: 'Delete Workshop pieces' }).click()
      await list.getByRole('button', { name: 'Bring back Workshop pieces' }).click()
      await list.getByRole('button', { name: 'Open Workshop pieces' }).click()
      await list.waitFor({ state: 'detached' })
      await waitForCensus(page)
      await expect.poll(() => page.locator('tr.row').count()).toBe(1)
      await expect.poll(() => totalGrams(page)).toBe(total)
    }, LOCALE)
  })

  test('keeps the good files of a drop when one is broken, and says which and why', async () => {
    await withApp(async ({ page }) => {
      const broken = textFile(
        'half-arm.stl',
        'solid half\nfacet normal 0 0 1\nouter loop\nvertex 1 2',
      )
      await dropFiles(page, [demoFile('gps-mast.stl'), broken, demoFile('damper-cup.stl')])
      await page.locator('tr.row').nth(1).waitFor()
      await waitForCensus(page)
      await expect.poll(() => page.locator('tr.row').count()).toBe(2)
      const complaint = page.getByRole('region', { name: 'Files left out' })
      await expect.poll(() => complaint.innerText()).toMatch(/half-arm\.stl[\s\S]*export it again/)
      await complaint.getByRole('button', { name: 'Dismiss half-arm.stl' }).click()
      await complaint.waitFor({ state: 'detached' })
      await expect.poll(() => page.locator('tr.row').count()).toBe(2)
    }, LOCALE)
  })

  test('gets a removed part back with undo', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, ['gps-mast.stl', 'damper-cup.stl'].map(demoFile))
      await page.locator('tr.row').nth(1).waitFor()
      await waitForCensus(page)
      const total = await totalGrams(page)
      await page.getByRole('checkbox', { name: 'Tick gps mast' }).focus()
      await page.keyboard.press('Space')
      await page.getByRole('button', { name: 'Remove', exact: true }).click()
      await expect.poll(() => page.locator('tr.row').count()).toBe(1)
      await page.locator('.notice').getByRole('button', { name: 'Undo' }).click()
      await waitForCensus(page)
      await expect.poll(() => page.locator('tr.row').count()).toBe(2)
      await expect.poll(() => totalGrams(page)).toBe(total)
    }, LOCALE)
  })
})
