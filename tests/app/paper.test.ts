import type { Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { sharedApp } from '../support/app.ts'
import { chooseFromMenu, goToSheet, loadSandpiper, openRow } from '../support/page.ts'
import { readPdf } from '../support/readPdf.ts'

const WIDE = { locale: 'en-GB', viewport: { width: 1440, height: 900 }, hasCounted: true }
/** 210 × 297 mm and 8.5 × 11 in, in points. */
const PAPERS = [
  ['A4', false, 595, 842],
  ['A4', true, 842, 595],
  ['Letter', false, 612, 792],
  ['Letter', true, 792, 612],
] as const

async function loadDrawn(page: Page): Promise<void> {
  await loadSandpiper(page)
  await page.locator('.item-number').first().waitFor()
  // The order of assembly is found in slices, and comes after the drawing.
  await page.locator('.order-paper li').first().waitFor({ state: 'attached' })
}

/**
 * Runs in the page: types into a field and has the browser lay the page out for paper in one
 * breath, as a slow machine has it; then what is to be printed.
 */
function typeAndPrint(
  field: HTMLElement | SVGElement,
  text: string,
): { readonly paper: string; readonly block: string } {
  const write = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set
  write?.call(field, text)
  field.dispatchEvent(new Event('input', { bubbles: true }))
  field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }))
  dispatchEvent(new Event('beforeprint'))
  const paper = document.querySelector('.part-paper')?.textContent ?? ''
  const block = document.querySelector('.part-sheet .title-block')?.textContent ?? ''
  dispatchEvent(new Event('afterprint'))
  return { paper, block }
}

describe('on paper', { timeout: 500_000 }, () => {
  const onDrawn = sharedApp(loadDrawn, WIDE)

  test('the frame fits A4 and Letter, either way round', async () => {
    await onDrawn(async ({ page }) => {
      const costs = await page.locator('tr.row .cell-cost .range').allInnerTexts()
      expect(costs).toHaveLength(13)
      for (const [format, landscape, wide, high] of PAPERS) {
        const pages = await readPdf(await page.pdf({ format, landscape }))
        // One way round the frame is one page; the other its list goes on upon a second. The order
        // in which it goes together comes last.
        expect(pages).toHaveLength(2)
        expect(pages[0]?.text.includes('1 of 6')).toBe(landscape)
        expect(pages[1]?.text).toContain('Start with Lower deck.')
        for (const { widthPt, heightPt } of pages) {
          expect(Math.abs(widthPt - wide)).toBeLessThan(1)
          expect(Math.abs(heightPt - high)).toBeLessThan(1)
        }
        const text = pages.map((one) => one.text).join(' ')
        // What each costs, which a screen as wide as landscape has no room for.
        const bare = text.replaceAll(/\s/g, '')
        for (const cost of costs) expect(bare).toContain(cost.replaceAll(/\s/g, ''))
        for (const name of [
          'Front arm',
          'Damper cup',
          'Printed, on the aircraft',
          'Title',
          '1 of 6',
        ])
          expect(text).toContain(name)
        // Lines, no pixels; and nothing that can only be pressed.
        expect(pages.reduce((sum, { images }) => sum + images, 0)).toBe(0)
        for (const furniture of ['Undo', 'Save file', 'Add parts', 'Slant', 'Read all'])
          expect(text).not.toContain(furniture)
      }
    })
  })

  test('a part is drawn in lines beside its recipe, without the fields to set it', async () => {
    await onDrawn(async ({ page }) => {
      await openRow(page, 'Tail boom')
      await page.locator('.part-paper .section-drawing').waitFor({ state: 'attached' })
      const pages = await readPdf(await page.pdf({ format: 'A4' }))
      expect(pages).toHaveLength(1)
      const [{ text, images } = { text: '', images: -1 }] = pages
      expect(images).toBe(0)
      for (const words of [
        'Tail boom',
        '4 lines = 1.6 mm',
        '20 % grid',
        '2 of 6',
        'A–A',
        'infill 20 %',
      ])
        expect(text).toContain(words)
      expect(text).not.toContain('All settings')
    })
  })

  test('what was typed the moment before is on it', async () => {
    await onDrawn(async ({ page }) => {
      const panel = await openRow(page, 'Tail boom')
      await page.locator('.part-paper .section-drawing').waitFor({ state: 'attached' })
      const layer = panel.getByRole('textbox', { name: 'Layer height' })
      const thin = await layer.evaluate(typeAndPrint, '0.16')
      expect(thin.paper).toContain('0.16 mm, 0.2 mm')
      const thick = await layer.evaluate(typeAndPrint, '0.2')
      expect(thick.paper).toContain('0.2 mm, 0.2 mm')
      // The title block tells of it too.
      expect(thick.block).not.toBe(thin.block)
    })
  })

  test('the whole set has a page for every part, carbon, aircraft, bench, and the sources', async () => {
    await onDrawn(async ({ page }) => {
      await chooseFromMenu(page, 'The whole set on paper')
      await page.getByRole('button', { name: 'Print the whole set', disabled: false }).waitFor()
      await page.locator('.part-drawing').nth(12).waitFor()
      const pages = await readPdf(await page.pdf({ format: 'A4' }))
      // 13 parts, frame, carbon, aircraft, bench, notes at least.
      expect(pages.length).toBeGreaterThanOrEqual(18)
      const text = pages.map((one) => one.text).join(' ')
      for (const words of [
        'Against carbon',
        'Aircraft, all up',
        'Weigh-in',
        'Assumptions, sources, cautions',
        'Carbon dust is sharp',
        'g/cm³',
      ])
        expect(text).toContain(words)
      // Nothing that is only asked for, and no section that holds nothing but empty fields.
      for (const empty of [
        'Print the whole set',
        'Printer file',
        'Clock',
        'Save all that was learned',
      ])
        expect(text).not.toContain(empty)
      await goToSheet(page, 'frame')
    })
  })
})
