import { chromium } from 'playwright'
import { expect, inject, test } from 'vitest'
import { browserFlags, findBrowser } from '../../src/tools/browser.mjs'
import { box } from '../support/meshes.ts'
import { dropFiles, openRow, openSection, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const BAR = { name: 'bar.stl', bytes: writeStlBinary(box(20, 8, 6)) }

/**
 * A page on a host in the workshop, over plain http: no locks, no folders, no `crypto.randomUUID`.
 */
test('over plain http parts and items are added, kept and opened again', async () => {
  const { port } = new URL(inject('appUrl'))
  const executablePath = findBrowser()
  const browser = await chromium.launch({
    args: [...browserFlags(), '--host-resolver-rules=MAP workshop.test 127.0.0.1'],
    ...(executablePath === undefined ? {} : { executablePath }),
  })
  const errors: string[] = []
  try {
    const context = await browser.newContext({ locale: 'en-GB', serviceWorkers: 'block' })
    context.setDefaultTimeout(60_000)
    context.on('weberror', (error) => errors.push(String(error.error())))
    const page = await context.newPage()
    await page.goto(`http://workshop.test:${port}/`)
    expect(await page.evaluate(() => [isSecureContext, 'randomUUID' in crypto])).toEqual([
      false,
      false,
    ])
    await dropFiles(page, [BAR])
    await waitForCensus(page)
    await openRow(page, 'bar')
    const infill = page.getByRole('textbox', { name: 'Infill share' })
    await infill.fill('33,3')
    await infill.press('Tab')
    await page.keyboard.press('Escape')
    await openSection(page, 'Bolts and bought items')
    await page.getByRole('button', { name: 'Type one in' }).click()
    await page.getByText('Saved on this device').waitFor()

    // A material begun and left by Escape is none, and that is said.
    await page.getByRole('button', { name: /^Materials:/ }).click()
    await page.getByRole('button', { name: 'Add a material' }).click()
    await page.getByRole('form', { name: /Edit Own material/ }).waitFor()
    await page.keyboard.press('Escape')
    await page.getByText(/What was typed for “Own material \d+” was not kept/).waitFor()
    await page.getByRole('button', { name: /^Materials:/ }).click()
    expect(await page.getByRole('dialog').getByText('Own material').count()).toBe(0)
    await page.keyboard.press('Escape')

    await page.reload()
    await waitForCensus(page)
    await openRow(page, 'bar')
    await expect
      .poll(() => page.getByRole('textbox', { name: 'Infill share' }).inputValue())
      .toBe('33.3')
    await page.keyboard.press('Escape')
    await openSection(page, 'Bolts and bought items')
    await page.getByText('New item').first().waitFor()
    expect(errors).toEqual([])
  } finally {
    await browser.close()
  }
})
