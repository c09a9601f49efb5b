import { expect, test } from 'vitest'
import type { Page } from 'playwright'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { withApp } from '../support/app.ts'
import { box, translate } from '../support/meshes.ts'
import { dropFiles, gramsOf, openRow, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }
const BAR = box(60, 24, 16)

async function chooseZone(page: Page, mesh: Mesh): Promise<void> {
  const zone = page.getByRole('group', { name: 'Zone with its own infill' })
  const choosing = page.waitForEvent('filechooser')
  await zone.getByRole('button', { name: /Choose/ }).click()
  const buffer = Buffer.from(writeStlBinary(mesh))
  await (await choosing).setFiles({ name: 'root.stl', mimeType: 'model/stl', buffer })
  await zone.getByText('root.stl').waitFor()
  await page.locator('.incoming-name').waitFor({ state: 'detached' })
  await waitForCensus(page)
}

async function type(page: Page, name: string, value: string): Promise<void> {
  const field = page.getByRole('textbox', { name })
  await field.fill(value)
  await field.press('Enter')
  await waitForCensus(page)
}

test(
  'a second mesh gives the part an infill of its own where it lies',
  { timeout: 120_000 },
  async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [{ name: 'bar.stl', bytes: writeStlBinary(BAR) }])
      await waitForCensus(page)
      await openRow(page, 'bar')
      await type(page, 'Infill share', '60')
      const dense = await gramsOf(page, 'bar')
      await type(page, 'Infill share', '20')
      const light = await gramsOf(page, 'bar')

      // A zone that holds the whole bar at 60 % makes the bar that is 60 % throughout.
      await chooseZone(page, BAR)
      await type(page, 'Infill in the zone', '60')
      expect(await gramsOf(page, 'bar')).toBeCloseTo(dense, 1)

      // One that holds half its length lies half way, but for the turns at its edge.
      await page.getByRole('button', { name: 'Remove' }).click()
      await waitForCensus(page)
      expect(await gramsOf(page, 'bar')).toBe(light)
      await chooseZone(page, box(30, 24, 16))
      await type(page, 'Infill in the zone', '60')
      const half = await gramsOf(page, 'bar')
      expect(Math.abs(half - (dense + light) / 2)).toBeLessThan(0.06 * (dense - light))

      await page.getByText('Saved on this device').waitFor()
      await page.reload()
      await waitForCensus(page)
      expect(await gramsOf(page, 'bar')).toBe(half)

      await openRow(page, 'bar')
      await chooseZone(page, translate(BAR, [500, 0, 0]))
      await page.getByText('No infill room of the part lies in the zone').waitFor()
      expect(await gramsOf(page, 'bar')).toBe(light)
    }, LOCALE)
  },
)
