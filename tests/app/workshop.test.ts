import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import {
  chooseFromMenu,
  demoFile,
  dropFiles,
  goToSheet,
  gramsOf,
  openPrinter,
  openRow,
  openSection,
  waitForCensus,
} from '../support/page.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }

test('printer and roles are the builder’s: after a reload a new frame starts with them', async () => {
  await withApp(async ({ page }) => {
    await dropFiles(page, [demoFile('front-arm.stl')])
    await waitForCensus(page)
    await goToSheet(page, 'frame')
    await openPrinter(page)
    const sheet = page.getByRole('dialog', { name: 'Printer' })
    const speed = sheet.getByLabel('Wall speed')
    await speed.fill('87.5')
    await speed.press('Enter')
    await sheet.getByText('Your printer: what you change here, new frames start with.').waitFor()
    await sheet.getByRole('button', { name: 'Close' }).click()

    const panel = await openRow(page, 'front arm')
    await panel.getByRole('button', { name: 'Keep as a role' }).click()
    await panel.getByRole('textbox', { name: 'Name of the role' }).fill('Race arm')
    await panel.getByRole('button', { name: 'Keep this name' }).click()
    await panel.getByRole('button', { name: 'Delete this role' }).waitFor()
    await page.getByText('Saved on this device').waitFor()

    await page.reload()
    await waitForCensus(page)
    await chooseFromMenu(page, 'New frame')
    await dropFiles(page, [demoFile('camera-tray.obj')])
    await waitForCensus(page)
    await goToSheet(page, 'frame')
    await openPrinter(page)
    const again = page.getByRole('dialog', { name: 'Printer' })
    await expect.poll(() => again.getByLabel('Wall speed').inputValue()).toBe('87.5')
    await again.getByRole('button', { name: 'Close' }).click()
    const tray = await openRow(page, 'camera tray')
    await tray.getByRole('button', { name: /Recipe for/ }).click()
    await page.getByRole('option', { name: /Race arm/ }).click()
    await tray.getByRole('button', { name: 'Delete this role' }).waitFor()
  })
})

test('what earlier frames taught stands with spool and printer, and is dropped one by one or all', async () => {
  await withApp(async ({ page }) => {
    await dropFiles(page, [demoFile('front-arm.stl'), demoFile('camera-tray.obj')])
    await waitForCensus(page)
    const bench = await openSection(page, 'Weigh-in')
    for (const name of ['front arm', 'camera tray']) {
      const line = bench.locator('.weigh-list > li', { hasText: name })
      const told = line.getByText(/reckoned [\d.]+\sg/)
      const reckoned = Number(/reckoned ([\d.]+)/.exec(await told.innerText())?.[1])
      const field = line.getByRole('textbox', { name: `${name} on the scale` })
      await field.fill((1.04 * reckoned).toFixed(1))
      await field.press('Tab')
    }
    await bench.getByText('from 2 weighings').waitFor()
    // Its own readings are not among those of earlier frames.
    expect(await bench.getByText(/Learned from earlier frames/).count()).toBe(0)
    await page.getByText('Saved on this device').waitFor()

    await chooseFromMenu(page, 'New frame')
    await dropFiles(page, [demoFile('front-arm.stl')])
    await waitForCensus(page)
    const taughtG = await gramsOf(page, 'front arm')
    const again = await openSection(page, 'Weigh-in')
    await again.getByText('from 2 weighings').waitFor()
    await again.getByText('Learned from earlier frames (2)').click()
    const lessons = again.getByRole('list', { name: 'Learned from earlier frames' }).locator('li')
    await expect.poll(() => lessons.count()).toBe(2)
    const words = await lessons.allInnerTexts()
    for (const each of words) {
      expect(each).toMatch(/ on the scale, printed on Ordinary printer of today: [\d.]+ % above/)
    }
    await lessons.first().getByRole('button', { name: 'Forget' }).click()
    await again.getByText('Learned from earlier frames (1)').waitFor()
    await again.getByText('from 1 weighing.').waitFor()
    await again.getByRole('button', { name: 'Forget all of them' }).click()
    await again.getByText(/Learned from earlier frames/).waitFor({ state: 'detached' })
    await expect.poll(() => again.getByText(/from \d weighing/).count()).toBe(0)
    await expect.poll(() => gramsOf(page, 'front arm')).toBeLessThan(taughtG)
    await page.getByText('Saved on this device').waitFor()
    await page.reload()
    await waitForCensus(page)
    const later = await openSection(page, 'Weigh-in')
    expect(await later.getByText(/Learned from earlier frames/).count()).toBe(0)
  }, LOCALE)
})

test('a material of one’s own stays while a part is made of it, and goes when none is', async () => {
  await withApp(async ({ page }) => {
    await dropFiles(page, [demoFile('front-arm.stl')])
    await waitForCensus(page)
    const openMaterials = async () => {
      await page.getByRole('button', { name: /^Materials: / }).click()
      return page.getByRole('dialog', { name: 'Materials' })
    }
    const dialog = await openMaterials()
    await dialog.getByRole('button', { name: 'Add a material' }).click()
    await dialog.getByRole('textbox', { name: 'Name' }).fill('Black spool')
    const density = dialog.getByRole('textbox', { name: 'Density of your spool' })
    await density.fill('1.5')
    await density.press('Tab')
    await dialog.getByRole('button', { name: 'Keep these figures' }).click()
    await dialog.getByRole('button', { name: 'Edit Black spool' }).waitFor()
    await dialog.getByRole('button', { name: 'Close' }).click()

    const choose = async (name: RegExp) => {
      const panel = await openRow(page, 'front arm')
      await panel.getByRole('button', { name: /Material/ }).click()
      await page.getByRole('option', { name }).click()
    }
    const plainG = await gramsOf(page, 'front arm')
    await choose(/^Black spool/)
    await expect.poll(() => gramsOf(page, 'front arm')).not.toBe(plainG)
    const blackG = await gramsOf(page, 'front arm')
    const remove = async () => {
      const sheet = await openMaterials()
      await sheet.getByRole('button', { name: 'Edit Black spool' }).click()
      await sheet.getByRole('button', { name: 'Remove this material' }).click()
      return sheet
    }
    const refused = await remove()
    await page.getByText('“Black spool” stays: “front arm” would be without a material.').waitFor()
    await refused.getByRole('button', { name: 'Edit Black spool' }).waitFor()
    await refused.getByRole('button', { name: 'Close' }).click()
    await expect.poll(() => gramsOf(page, 'front arm')).toBe(blackG)

    await choose(/^PETG \d/)
    await expect.poll(() => gramsOf(page, 'front arm')).toBeLessThan(blackG)
    const done = await remove()
    await done.getByRole('button', { name: 'Edit Black spool' }).waitFor({ state: 'detached' })
    await done.getByRole('button', { name: 'Close' }).click()
    await page.getByRole('button', { name: /^Undo: remove the material “Black spool”/ }).click()
    await choose(/^Black spool/)
    await expect.poll(() => gramsOf(page, 'front arm')).toBe(blackG)
  }, LOCALE)
})
