import { readFile } from 'node:fs/promises'
import { expect, test } from 'vitest'
import { readMesh } from '../../src/core/formats/read.ts'
import { findHoles } from '../../src/core/mesh/holes/findHoles.ts'
import { withApp } from '../support/app.ts'
import { readPdf } from '../support/readPdf.ts'
import { goToSheet, loadSandpiper } from '../support/page.ts'

test('the drill list numbers the sample’s holes, takes choices and learns from a coupon', async () => {
  await withApp(
    async ({ page }) => {
      await loadSandpiper(page)
      await goToSheet(page, 'bench')
      const drill = page.getByRole('region', { name: 'Drill list' })
      const rows = drill.locator('tbody tr')
      // Rows come one after the other, the widest drill last.
      await drill.locator('.drill-size', { hasText: /^8\smm$/ }).waitFor()
      const sizes = (await drill.locator('.drill-size').allInnerTexts()).filter(
        (text) => text !== '',
      )
      const numbers = sizes.filter((text) => text !== 'none').map((text) => Number.parseFloat(text))
      expect(numbers.length).toBeGreaterThan(3)
      expect(numbers).toEqual(numbers.toSorted((a, b) => a - b))

      // The drawing has the numbers of the list.
      const deck = rows.filter({ hasText: 'Lower deck' }).filter({ hasText: 'its joint' }).first()
      await deck
        .getByRole('button', { name: /Lower deck/ })
        .first()
        .click()
      const drawing = drill.getByRole('img', { name: 'Lower deck with the numbers of its holes' })
      await drawing.waitFor()
      await drawing.getByText('1.1', { exact: true }).waitFor()

      // A choice is kept with the part, told as one, and undone.
      const choice = deck.getByRole('button', { name: /What hole .* of Lower deck/ })
      await choice.click()
      await page.getByRole('option', { name: 'M4 screw passes', exact: true }).click()
      // Every choice holds all its options for the browser, unseen; the button says the chosen one.
      const four = rows.filter({
        has: page.locator('.choice-button').filter({ hasText: 'M4 screw passes' }),
      })
      await four.getByText('chosen', { exact: true }).waitFor()
      await page.getByRole('button', { name: /^Undo/ }).click()
      await four.waitFor({ state: 'detached' })

      // Bolts that a pattern was chosen for are held against the parts.
      const order = page.getByRole('region', { name: 'Before you order' })
      const controller = order.getByRole('listitem').filter({ hasText: /^Speed controller/ })
      await controller.getByText('not told').first().waitFor()
      await controller.getByRole('button').click()
      await page.getByRole('option', { name: '25.5 × 25.5 mm', exact: true }).click()
      await controller.getByText('does not fit').waitFor()

      // The coupon is a mesh with the bores it names; a measured one narrows what is said.
      const saved = page.waitForEvent('download')
      await drill.getByRole('button', { name: 'Save the coupon as STL' }).click()
      const file = await (await saved).path()
      const { mesh } = readMesh(Uint8Array.from(await readFile(file)), 'coupon.stl')
      expect(findHoles(mesh).length % 5).toBe(0)
      expect(findHoles(mesh).length).toBeGreaterThan(5)
      const before = await deck.locator('td.number').nth(2).innerText()
      const box = drill.getByLabel('Measured', { exact: true })
      await box.fill('2.1')
      await box.press('Enter')
      await drill.getByRole('list', { name: 'Measured holes' }).getByRole('listitem').waitFor()
      await drill.getByText(/lose .* after one hole measured/).waitFor()
      await expect.poll(() => box.inputValue()).toBe('')
      await drill.getByRole('button', { name: 'Take out' }).click()
      await drill.getByRole('list', { name: 'Measured holes' }).waitFor({ state: 'detached' })
      await expect.poll(() => deck.locator('td.number').nth(2).innerText()).toBe(before)

      for (const [width, theme] of [
        [1440, 'light'],
        [768, 'light'],
        [360, 'dark'],
      ] as const) {
        await page.emulateMedia({ colorScheme: theme })
        await page.setViewportSize({ width, height: 900 })
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        )
        expect(over).toBeLessThanOrEqual(0)
      }

      // On paper it is one page: its head would stand on a second one again.
      await page.setViewportSize({ width: 1440, height: 900 })
      const paper = await readPdf(await page.pdf({ format: 'A4' }))
      expect(paper.filter(({ text }) => text.includes('Comes out'))).toHaveLength(1)

      // The coupon as a frame: its hours and grams before the first part is printed.
      await drill.getByRole('button', { name: 'Open it as a frame of its own' }).click()
      await page.locator('.row-name', { hasText: 'Coupon of holes' }).waitFor()
    },
    { hasCounted: true },
  )
}, 500_000)
