import { expect, test } from 'vitest'
import type { Page } from 'playwright'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { withApp } from '../support/app.ts'
import { box, translate } from '../support/meshes.ts'
import {
  dropFiles,
  gramsOf,
  gramsWordsInBlock,
  gramsWordsOf,
  goToSheet,
  openRow,
  waitForCensus,
} from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }
const BAR = box(60, 24, 16)

async function addZones(page: Page, zones: Readonly<Record<string, Mesh>>): Promise<void> {
  const group = page.getByRole('group', { name: 'Zones with their own infill' })
  const choosing = page.waitForEvent('filechooser')
  await group.getByRole('button', { name: 'Add a zone' }).click()
  const files = Object.entries(zones).map(([name, mesh]) => ({
    name,
    mimeType: 'model/stl',
    buffer: Buffer.from(writeStlBinary(mesh)),
  }))
  await (await choosing).setFiles(files)
  for (const { name } of files) await group.getByText(name).waitFor()
  await page.locator('.incoming-name').waitFor({ state: 'detached' })
  await waitForCensus(page)
}

async function germanGrams(page: Page): Promise<number> {
  const words = await gramsWordsOf(page, 'bar')
  return Number(words.replaceAll(/[^\d,]/g, '').replace(',', '.'))
}

async function type(page: Page, name: string, value: string): Promise<void> {
  const field = page.getByRole('textbox', { name })
  await field.fill(value)
  await field.press('Enter')
  await waitForCensus(page)
}

test(
  'a second mesh gives the part an infill of its own where it lies',
  { timeout: 300_000 },
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
      await addZones(page, { 'root.stl': BAR })
      await type(page, 'Infill in root.stl', '60')
      await expect.poll(() => gramsOf(page, 'bar')).toBeCloseTo(dense, 1)

      // One that holds half its length lies half way, but for the turns at its edge.
      await page.getByRole('button', { name: 'Remove root.stl' }).click()
      await waitForCensus(page)
      await expect.poll(() => gramsOf(page, 'bar')).toBe(light)
      await addZones(page, { 'root.stl': box(30, 24, 16) })
      await type(page, 'Infill in root.stl', '60')
      const half = await gramsOf(page, 'bar')
      expect(Math.abs(half - (dense + light) / 2)).toBeLessThan(0.06 * (dense - light))

      await page.getByText('Saved on this device').waitFor()
      await page.reload()
      await waitForCensus(page)
      await expect.poll(() => gramsOf(page, 'bar')).toBe(half)

      await openRow(page, 'bar')
      await page.getByRole('button', { name: 'Remove root.stl' }).click()
      await waitForCensus(page)
      await addZones(page, { 'far.stl': translate(BAR, [500, 0, 0]) })
      await page.getByText('No infill room of the part is left to this zone').waitFor()
      await expect.poll(() => gramsOf(page, 'bar')).toBe(light)
    }, LOCALE)
  },
)

test(
  'two zones at once, each with its own infill, typed as Germans do',
  { timeout: 300_000 },
  async () => {
    await withApp(
      async ({ page }) => {
        await dropFiles(page, [{ name: 'bar.stl', bytes: writeStlBinary(BAR) }])
        await waitForCensus(page)
        await openRow(page, 'bar')
        const at = async (pct: string): Promise<number> => {
          await type(page, 'Infill share', pct)
          return germanGrams(page)
        }
        const light = await at('6')
        const dense = await at('12,5')
        await at('50')
        const left = { name: 'left.stl', bytes: writeStlBinary(box(30, 24, 16)) }
        const far = translate(box(30, 24, 16), [30, 0, 0])
        await dropFiles(
          page,
          [left, { name: 'right.stl', bytes: writeStlBinary(far) }],
          '.zone-field',
        )
        await page.getByRole('button', { name: 'Remove right.stl' }).waitFor()
        await waitForCensus(page)
        // They are zones, not parts.
        await goToSheet(page, 'frame')
        await expect.poll(() => page.locator('tr.row').count()).toBe(1)
        await openRow(page, 'bar')
        await type(page, 'Infill in left.stl', '6')
        await type(page, 'Infill in right.stl', '12,5')
        // Nothing is left outside of the two, so the bar lies half-way but for the turns where they
        // meet.
        const both = await germanGrams(page)
        expect(Math.abs(both - (light + dense) / 2)).toBeLessThan(0.3 * (dense - light))

        const field = page.getByRole('textbox', { name: 'Infill in right.stl' })
        await field.fill('120')
        await field.press('Enter')
        await page.getByRole('alert').getByText('Takes 0 to 100').waitFor()
        await expect.poll(() => gramsWordsInBlock(page)).toBe(String(both).replace('.', ','))
        await field.press('Escape')
        await expect.poll(() => germanGrams(page)).toBe(both)

        await page.getByRole('button', { name: 'Move left.stl down' }).click()
        await waitForCensus(page)
        const names = page.locator('.zone-list .file-name')
        await expect.poll(() => names.allInnerTexts()).toEqual(['right.stl', 'left.stl'])
        expect(Math.abs((await germanGrams(page)) - both)).toBeLessThan(0.1)

        await addZones(page, { 'right.stl': far })
        await page.getByText('a zone of this part already').waitFor()
      },
      { ...LOCALE, locale: 'de-DE' },
    )
  },
)
