import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { circle, prism, rectangle } from '../support/meshes.ts'
import { dropFiles, goToSheet, openSection, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const WIDE = { locale: 'en-GB', viewport: { width: 1280, height: 900 }, hasCounted: true }

test('the outlines that would be cut are drawn at one scale, each with its size', async () => {
  await withApp(async ({ page }) => {
    const plate = (wide: number, deep: number) =>
      writeStlBinary(prism(rectangle(wide, deep), 3, [circle(4, 48, 15, 15)]))
    await dropFiles(page, [
      { name: 'long.stl', bytes: plate(90, 30) },
      { name: 'short.stl', bytes: plate(45, 30) },
    ])
    await waitForCensus(page)
    await openSection(page, 'Carbon twin')
    const long = page.getByRole('img', { name: 'Cut outline of long, 90 × 30 mm' })
    const short = page.getByRole('img', { name: 'Cut outline of short, 45 × 30 mm' })
    const [one, two] = [await long.boundingBox(), await short.boundingBox()]
    // 2 px either side are for the line.
    expect((one!.width - 4) / (two!.width - 4)).toBeCloseTo(2, 2)
    expect(one!.height).toBeCloseTo(two!.height, 1)
    // Outside and one hole.
    await expect
      .poll(async () => (await long.locator('path').getAttribute('d'))?.match(/M/g))
      .toHaveLength(2)
    // Without an arm nothing is solved before it is asked for, nor said to be.
    const by = page.getByRole('status').filter({ hasText: 'As stiff by strips of their layers' })
    await expect.poll(() => by.innerText()).not.toContain('Being solved')
  }, WIDE)
})

test('a season is a picture above its tables, and says the same in words', async () => {
  await withApp(async ({ page }) => {
    await page.getByRole('button', { name: /Load Sandpiper/ }).click()
    await page.locator('.item-number').first().waitFor()
    await openSection(page, 'Carbon twin')
    const picture = page.getByRole('img', {
      name: /^A season: printed .+ \(.+\); bought carbon .+; printed [\d.]+ days .*spares wanted\.$/,
    })
    await picture.waitFor()
    await expect.poll(() => picture.locator('.season-reach').count()).toBe(4)
    const table = page.getByRole('table', { name: 'The season on both frames' })
    // Money of the printed frame stands in both, the same once the print runs are laid.
    const isSame = async () => {
      const printed = await table.getByRole('cell').nth(1).innerText()
      return (await picture.innerHTML()).includes(printed.split('\n')[0]?.trim() ?? '-')
    }
    await expect.poll(isSame, { timeout: 60_000 }).toBe(true)
  }, WIDE)
})

test('of a glider nothing is said about carbon before it is asked for', async () => {
  await withApp(async ({ page }) => {
    await page.getByRole('button', { name: /Tern/ }).first().click()
    await page.locator('.item-number').first().waitFor()
    expect(await page.locator('.totals').innerText()).not.toMatch(/carbon [^A]/)
    const sheet = await goToSheet(page, 'carbon')
    await sheet.getByText('Nothing of this plane is compared with carbon').waitFor()
    expect(await sheet.innerText()).not.toContain('dust')
    await sheet.getByRole('button', { name: 'Show its flat parts cut from plate' }).click()
    await openSection(page, 'Carbon twin')
    await sheet.getByText(/Dust from cutting carbon conducts/).waitFor()
  }, WIDE)
})
