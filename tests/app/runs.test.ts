import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import { dropMeshes, goToSheet, loadSandpiper, openRow, waitForCensus } from '../support/page.ts'

test('the bench lays the frame into print runs, drawn, and divides them anew on choice', async () => {
  await withApp(
    async ({ page }) => {
      await loadSandpiper(page)
      await goToSheet(page, 'bench')
      const runs = page.getByRole('region', { name: 'Print runs' })
      const beds = runs.getByRole('group', { name: /^Bed of run / })
      await beds.first().waitFor()
      const few = await beds.count()
      // Every piece is drawn, and the sum told beside what the head counts.
      const laid = await runs.locator('.bed-piece').count()
      const words = (await page.locator('body').innerText()).replaceAll('\u00a0', ' ')
      const [, flying, spare] = /(\d+) pieces and (\d+) spare/.exec(words) ?? []
      expect(laid).toBe(Number(flying) + Number(spare))
      await runs.getByText(`in ${few} print runs, spares too`).waitFor()
      // The head says the same hours, and the runs add up to them, as far as minutes can.
      const shown = (await page.locator('.total-time .total-figure').innerText()).replace('~', '')
      const minutesOf = (clock: string) => clock.split(':').reduce((all, x) => 60 * all + +x, 0)
      const own = (await runs.locator('.run-figures').allInnerTexts()).map((line) => {
        const [, h = 0, min = 0] = /^(?:(\d+)\sh)?\s?(?:(\d+)\smin)?/.exec(line) ?? []
        return 60 * +h + +min
      })
      const sum = own.reduce((all, one) => all + one, 0)
      expect(Math.abs(sum - minutesOf(shown))).toBeLessThanOrEqual(3 + few)

      await runs.getByRole('button', { name: 'Divided for' }).click()
      await page.getByRole('option', { name: /^evenings/ }).click()
      await beds.nth(few).waitFor()
      await expect.poll(() => runs.locator('.bed-piece').count()).toBe(laid)
      await page.getByRole('button', { name: /^Undo/ }).click()
      await beds.nth(few).waitFor({ state: 'detached' })

      // An edge of 60 mm leaves beds of 100: booms and arms go on none, and are told with both
      // lengths.
      const edge = runs.getByLabel('Edge of the bed')
      await edge.fill('60')
      await edge.press('Enter')
      await runs
        .getByText(/is in no print run: too long/)
        .first()
        .waitFor()

      await expect.poll(() => runs.locator('.bed-piece').count()).toBeLessThan(laid)

      // Come back to, the sheet has them still.
      await goToSheet(page, 'frame')
      await goToSheet(page, 'bench')
      await beds.first().waitFor()
    },
    { hasCounted: true },
  )
})

test('pieces are moved by hand: keys, mouse and numbers, to another run, undone and kept', async () => {
  await withApp(
    async ({ page }) => {
      const blocks = { bar: box(60, 12, 4), cup: box(12, 12, 3), clip: box(20, 8, 2) }
      await dropMeshes(page, blocks)
      await waitForCensus(page)
      const clip = await openRow(page, 'clip')
      await clip.getByRole('button', { name: /Material/ }).click()
      await page.getByRole('option', { name: /^PETG/ }).first().click()
      await goToSheet(page, 'bench')
      const runs = page.getByRole('region', { name: 'Print runs' })
      const beds = runs.getByRole('group', { name: /^Bed of run / })
      await beds.nth(1).waitFor()
      const few = 2
      const withCup = beds.filter({ has: page.getByRole('button', { name: / cup,/ }) })
      const cup = withCup.getByRole('button', { name: / cup,/ })
      const placeOf = async (): Promise<number[]> =>
        /, (\d+) across, (\d+) deep, turned (\d+)/
          .exec((await cup.getAttribute('aria-label')) ?? '')!
          .slice(1)
          .map(Number)
      const [x, y, turn] = await placeOf()

      // Two steps of the keyboard are undone together.
      await cup.focus()
      await page.keyboard.press('Shift+ArrowLeft')
      await page.keyboard.press('Shift+ArrowUp')
      await runs.getByText(/Placed by hand/).waitFor()
      await expect.poll(() => placeOf()).toEqual([x! - 10, y! + 10, turn])
      await page.getByRole('button', { name: /^Undo/ }).click()
      await runs.getByText(/Placed by hand/).waitFor({ state: 'detached' })
      await expect.poll(() => placeOf()).toEqual([x, y, turn])

      await cup.focus()
      await page.keyboard.press('r')
      await expect.poll(async () => (await placeOf())[2]).toBe((turn! + 15) % 360)

      // A number over the edge is told there, and the piece is drawn as wrong.
      const fields = runs.getByRole('group', { name: 'Place of cup' })
      await page.keyboard.press('Enter')
      await fields.getByLabel('Middle from the left').fill('1')
      await fields.getByLabel('Middle from the left').press('Enter')
      await runs.getByText('cup reaches over the edge of the bed.').waitFor()
      await fields.getByLabel('Middle from the left').fill('110')
      await fields.getByLabel('Middle from the left').press('Enter')
      await runs.getByText('cup reaches over the edge of the bed.').waitFor({ state: 'detached' })

      // A run of its own, and with the mouse onto a bed of another plastic, which refuses it.
      await fields.getByRole('button', { name: 'Printed in' }).click()
      await page.getByRole('option', { name: 'a run of its own' }).click()
      await beds.nth(few).waitFor()
      const other = beds.filter({ has: page.getByRole('button', { name: / clip,/ }) })
      const here = (await cup.boundingBox())!
      await page.mouse.move(here.x + here.width / 2, here.y + here.height / 2)
      await page.mouse.down()
      const there = (await other.boundingBox())!
      await page.mouse.move(there.x + there.width / 2, there.y + there.height / 2, { steps: 5 })
      await page.mouse.up()
      await runs.getByText(/a run has one plastic and one layer height/).waitFor()
      await expect.poll(() => beds.count()).toBe(few + 1)
      // Onto the bar's bed, which takes it.
      const bar = beds.filter({ has: page.getByRole('button', { name: / bar,/ }) })
      const own = (await bar.boundingBox())!
      const again = (await cup.boundingBox())!
      await page.mouse.move(again.x + again.width / 2, again.y + again.height / 2)
      await page.mouse.down()
      await page.mouse.move(own.x + own.width / 4, own.y + own.height / 4, { steps: 5 })
      await page.mouse.up()
      await beds.nth(few).waitFor({ state: 'detached' })
      const [quarterX, threeQuarters] = await placeOf()
      expect(Math.abs(quarterX! - 55)).toBeLessThan(4)
      expect(Math.abs(threeQuarters! - 165)).toBeLessThan(4)

      // Kept with the frame.
      await page.getByText('Saved on this device').waitFor()
      await page.reload()
      await runs.getByText(/Placed by hand/).waitFor()
      await expect.poll(() => placeOf()).toEqual([quarterX, threeQuarters, (turn! + 15) % 360])
      await runs.getByRole('button', { name: 'Lay again' }).click()
      await runs.getByText(/Placed by hand/).waitFor({ state: 'detached' })

      // A second printer takes one of the two runs; the last is done sooner than both take.
      await runs.getByRole('button', { name: 'Print on another one too' }).click()
      await page.getByRole('option', { name: /^Fast enclosed/ }).click()
      await runs.getByText(/side by side done in/).waitFor()
      const on = runs.getByRole('button', { name: /Run \d on/ })
      const printers = await on.allInnerTexts()
      expect(new Set(printers).size).toBe(few)
      // By hand both go on the new one, and that is kept as placed by hand.
      const first = printers.findIndex((name) => !name.startsWith('Fast'))
      await on.nth(first).click()
      await page.getByRole('option', { name: /^Fast enclosed/ }).click()
      await runs.getByText(/Placed by hand/).waitFor()
      await runs.getByText(/side by side done in/).waitFor({ state: 'detached' })
      // A coupon is printed first, in a run of its own.
      await runs.getByRole('button', { name: 'Lay again' }).click()
      await cup.focus()
      await page.keyboard.press('Enter')
      await runs.getByText('Printed first, as a coupon').click()
      await beds.nth(few).waitFor()
      await expect.poll(() => withCup.locator('.bed-piece').count()).toBe(1)
      // Without the second printer all is as before, but for the coupon.
      await runs.getByRole('button', { name: 'Take off' }).click()
      await runs
        .getByRole('button', { name: /Run \d on/ })
        .first()
        .waitFor({ state: 'detached' })
      await beds.first().getByRole('button', { name: / cup,/ }).waitFor()
    },
    { viewport: { width: 1440, height: 2400 } },
  )
})
