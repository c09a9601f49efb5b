import { readFileSync } from 'node:fs'
import type { Locator, Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import {
  chooseFromMenu,
  goToSheet,
  loadSandpiper,
  openRow,
  openSection,
  waitForCensus,
} from '../support/page.ts'
import { readPdf } from '../support/readPdf.ts'

/*
 * Factors: 1 in = 25.4 mm, NIST Special Publication 811 (2008), appendix B.8; 1 oz = 28.349 523 125
 * g (avoirdupois), NIST
 * Handbook 44, appendix C.
 */
const G_PER_OZ = 28.349523125

/** Both write 5,185 where English has 5.185. */
const LOCALES = [
  ['de-DE', ','],
  ['fr-FR', ','],
] as const

/** Each sheet below the list with its last section, which comes when all of it is drawn. */
const SHEETS = [
  ['frame', null],
  ['choose', 'Ways to lie'],
  ['carbon', 'Carbon twin'],
  ['aircraft', 'Flight'],
  ['bench', 'Spares'],
] as const

/**
 * What is metric by name: screws and plates as they are sold, rules by their masses, densities,
 * speeds, prices a kilogram, inertia.
 */
const NAMES = new RegExp(
  [
    /M\d(?:[.,]\d)? × [\d.,]+ mm/,
    /[\d.,]+ mm \([^)]*/,
    /62 g action|Alloy post, 22 mm|3 × 80 mm/,
    /g\/cm³|mm³?\/s²?|\/kg|g·m²/,
    /[\d.,]+ mm (?:nozzle|plate)/,
  ]
    .map(({ source }) => source)
    .join('|'),
  'g',
)

async function chooseUnit(page: Page, field: string, name: string): Promise<void> {
  await page.getByRole('dialog', { name: 'Units' }).getByRole('button', { name: field }).click()
  await page.getByRole('option', { name }).click()
}

async function toInchesAndOunces(page: Page): Promise<void> {
  await chooseFromMenu(page, 'Units')
  await chooseUnit(page, 'Lengths', 'Inches')
  await chooseUnit(page, 'Masses', 'Ounces')
  await page.getByRole('button', { name: 'Close' }).click()
}

/** A sheet's text without the rules that mass lines quote. */
async function wordsOf(place: Locator): Promise<string> {
  const rules = place.locator('.mass-lines')
  const text = await place.innerText()
  return (await rules.count()) === 0 ? text : text.replace(await rules.first().innerText(), '')
}

/** Figures in mm or g in a text, names left aside. */
function metricIn(text: string): readonly string[] {
  const plain = text.replaceAll(/\s+/g, ' ').replaceAll(NAMES, '')
  return plain.match(/.{0,30}\d ?(?:mm|cm|g|kg)[²³]?(?![\p{L}\d/·]).{0,10}/gu) ?? []
}

/** Fields whose unit is metric. */
function metricFields(page: Page): Promise<readonly string[]> {
  return page
    .locator('.number-box:visible .unit')
    .evaluateAll((units) =>
      units
        .map((unit) => unit.textContent ?? '')
        .filter((unit) => /^(?:mm²?|g|dm²|cm|.* = .* mm)$/.test(unit)),
    )
}

async function savedCsv(page: Page): Promise<string> {
  const coming = page.waitForEvent('download')
  await chooseFromMenu(page, 'Save as CSV')
  return readFileSync(await (await coming).path(), 'utf8')
}

function numberIn(words: string): number {
  return Number(words.replace(',', '.').replaceAll(/[^\d.]/g, ''))
}

describe('in inches and ounces', { timeout: 500_000 }, () => {
  test.each(LOCALES)(
    'a browser of %s shows the same figure in every place',
    async (locale, mark) => {
      await withApp(
        async ({ page }) => {
          await loadSandpiper(page)
          const csv = await savedCsv(page)
          expect(csv).toContain('"Mass (g)"')
          const head = page.locator('.total-grams .total-figure')
          const whole = page.locator('.total-grams')
          const grams = numberIn(await head.innerText())
          await toInchesAndOunces(page)
          await expect
            .poll(() => page.evaluate(() => document.activeElement?.textContent))
            .toBe('More')

          // The table stays in grams, with a point.
          expect(await savedCsv(page)).toBe(csv)
          const words = await head.innerText()
          expect(await whole.innerText()).toContain('oz')
          expect(words).toContain(mark)
          // The head has a tenth of a gram and a thousandth of an ounce.
          expect(numberIn(words)).toBeCloseTo(grams / G_PER_OZ, 2)
          await goToSheet(page, 'frame')
          const foot = await page.locator('tfoot .cell-grams .figure').innerText()
          expect(numberIn(foot)).toBe(numberIn(words))
          const spoken = page.locator('.totals [role="status"]')
          await expect
            .poll(() => spoken.innerText())
            .toContain(words.replaceAll(/\s*oz/g, '').trim())

          for (const [sheet, last] of SHEETS) {
            const place = await goToSheet(page, sheet)
            if (last !== null) await openSection(page, last)
            if (sheet === 'carbon') {
              await page.getByRole('button', { name: 'SVG outline of Lower deck' }).waitFor()
            }
            expect({ sheet, metric: metricIn(await wordsOf(place)) }).toEqual({
              sheet,
              metric: [],
            })
            expect({ sheet, fields: await metricFields(page) }).toEqual({ sheet, fields: [] })
          }
          const panel = await openRow(page, 'Tail boom')
          const layer = panel.getByRole('textbox', { name: 'Layer height' })
          // 0.2 mm
          expect(await layer.inputValue()).toBe(`0${mark}0079`)
          expect(metricIn(await page.locator('.part-sheet').innerText())).toEqual([])
          expect(await metricFields(page)).toEqual([])

          await layer.fill(`0${mark}01`)
          await layer.press('Tab')
          expect(await layer.inputValue()).toBe(`0${mark}01`)
          await layer.fill('1')
          await layer.press('Tab')
          // 0.02 to 2 mm
          const refused = (await page.getByRole('alert').innerText()).replaceAll(/\s/g, ' ')
          expect(refused).toContain(`0${mark}000788 to 0${mark}07874 in`)
          await layer.press('Escape')
          const paper = await readPdf(await page.pdf({ format: 'A4' }))
          const printed = paper.map(({ text }) => text).join(' ')
          expect(metricIn(printed)).toEqual([])
          expect(printed).toContain(`0${mark}01 in`)

          // Kept for the next visit, and what was typed is kept in mm: 0.01 in = 0.254 mm.
          await page.getByText('Saved on this device').waitFor()
          await page.reload()
          await waitForCensus(page)
          expect(await whole.innerText()).toContain('oz')
          await chooseFromMenu(page, 'Units')
          await chooseUnit(page, 'Lengths', 'Millimetres')
          await chooseUnit(page, 'Masses', 'Grams')
          await page.getByRole('button', { name: 'Close' }).click()
          expect(await whole.innerText()).not.toContain('oz')
          await (
            await openRow(page, 'Tail boom')
          )
            .getByRole('textbox', { name: 'Layer height' })
            .waitFor()
          expect(await page.getByRole('textbox', { name: 'Layer height' }).inputValue()).toBe(
            `0${mark}254`,
          )
        },
        { locale, viewport: { width: 1440, height: 900 }, hasCounted: true },
      )
    },
  )
})
