import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import {
  chooseFromMenu,
  demoFile,
  dropFiles,
  goToSheet,
  openPrinter,
  openRow,
  waitForCensus,
} from '../support/page.ts'

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
    expect(await again.getByLabel('Wall speed').inputValue()).toBe('87.5')
    await again.getByRole('button', { name: 'Close' }).click()
    const tray = await openRow(page, 'camera tray')
    await tray.getByRole('button', { name: /Recipe for/ }).click()
    await page.getByRole('option', { name: /Race arm/ }).click()
    await tray.getByRole('button', { name: 'Delete this role' }).waitFor()
  })
})
