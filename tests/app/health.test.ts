import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { demoFile, dropFiles, gramsOf, openRow, waitForCensus } from '../support/page.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }

describe('files that are not quite right', { timeout: 120_000 }, () => {
  test('a part drawn in inches says why and is rescaled by one click, alone', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, ['pivot-collar.stl', 'damper-cup.stl'].map(demoFile))
      await waitForCensus(page)
      const before = await gramsOf(page, 'damper cup')
      const panel = await openRow(page, 'pivot collar')
      await panel.getByText('which passes an M2 screw (ISO 273)').first().waitFor()
      await panel
        .getByRole('button', { name: 'Take all 2 files dropped together as inches' })
        .waitFor()
      await panel.getByRole('button', { name: 'Take it as inches' }).click()
      await waitForCensus(page)
      expect(await gramsOf(page, 'pivot collar')).toBeGreaterThan(1)
      expect(await gramsOf(page, 'damper cup')).toBe(before)
      expect(await panel.getByRole('button', { name: 'Take it as inches' }).count()).toBe(0)
    }, LOCALE)
  })

  test('three feet in one file become one row of three, and back', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [demoFile('feet.stl')])
      await waitForCensus(page)
      const whole = await gramsOf(page, 'feet')
      const panel = await openRow(page, 'feet')
      await panel.getByText('This file holds 3 equal parts.').waitFor()
      await panel.getByRole('button', { name: 'Make one row with a count' }).click()
      await page.getByText('Made one row of “feet”.').waitFor()
      await waitForCensus(page)
      // The row shows all pieces together.
      expect(Math.abs((await gramsOf(page, 'feet')) / whole - 1)).toBeLessThan(0.05)
    }, LOCALE)
  })

  test('the faces a part can lie on are compared before one is chosen', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [demoFile('front-arm.stl')])
      await waitForCensus(page)
      const panel = await openRow(page, 'front arm')
      expect(await panel.getByText('It lies flat:').count()).toBe(1)
      await panel.getByRole('button', { name: 'Compare the faces it can lie on' }).click()
      const faces = panel.locator('.faces li')
      await faces
        .first()
        .getByText(/\d\sg, .*support/)
        .waitFor()
      expect(await faces.count()).toBeGreaterThan(1)
      await faces.getByRole('button').first().click()
      await waitForCensus(page)
    }, LOCALE)
  })
})
