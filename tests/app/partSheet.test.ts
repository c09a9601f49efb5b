import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { box, circle, merge, prism, rectangle, translate } from '../support/meshes.ts'
import { dropFiles, openRow, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/** 60 × 30 × 10 mm with four bores of 5 mm; and the same with a loose triangle beside it. */
const PLATE = prism(rectangle(60, 30), 10, [
  circle(2.5, 48, 8, 8),
  circle(2.5, 48, 52, 8),
  circle(2.5, 48, 8, 22),
  circle(2.5, 48, 52, 22),
])

describe('the sheet of a part', { timeout: 400_000 }, () => {
  test('its drawing names holes, zones and what hangs over; the list below says the same', async () => {
    await withApp(
      async ({ page }) => {
        await dropFiles(page, [{ name: 'plate.stl', bytes: writeStlBinary(PLATE) }])
        await waitForCensus(page)
        const panel = await openRow(page, 'plate')
        const marks = panel.getByRole('list', { name: 'Shown on the drawing' })
        await marks.getByText('4 × Ø 5 mm, through, 10 mm deep, upright').waitFor()
        const drawing = panel.locator('.part-drawing')
        await drawing.getByText('4 × Ø 5', { exact: true }).waitFor()
        await expect.poll(() => drawing.locator('.mark-hole').count()).toBe(4)

        // A zone of 20 mm in its middle: outlined, with its infill beside it.
        const zone = translate(box(20, 30, 10), [20, 0, 0])
        await dropFiles(
          page,
          [{ name: 'root.stl', bytes: writeStlBinary(zone) }],
          '[data-zones-of]',
        )
        await marks.getByText(/^root\.stl: infill \d+ %$/).waitFor()
        await drawing.getByText('z1', { exact: true }).waitFor()
        await expect.poll(() => drawing.locator('.mark-zone').getAttribute('d')).toMatch(/^M/)

        // On its side, holes lie level and a view from the front looks into them.
        await panel.getByRole('button', { name: /Lies on the bed/ }).click()
        await page.getByRole('option', { name: /On its front/ }).click()
        await marks.getByText('4 × Ø 5 mm, through, 10 mm deep, level').waitFor()
        await marks.getByText(/cm² hang over or bridge a gap; supports are off/).waitFor()

        // The sign on the drawing leads to its line, and there stands what can be done.
        await panel.getByRole('button', { name: /^a: .* What to do$/ }).click()
        const line = marks.getByRole('listitem').filter({ hasText: 'hang over' })
        await expect.poll(() => line.evaluate((own) => own === document.activeElement)).toBe(true)
        await line.getByRole('button', { name: 'Turn supports on' }).click()
        await line.getByText(/supports are on/).waitFor()
        const remedy = line.getByRole('button', { name: 'Turn supports off' })
        await expect.poll(() => remedy.evaluate((own) => own === document.activeElement)).toBe(true)
        await panel.getByRole('button', { name: 'Top', exact: true }).click()
        await marks.getByText('(not seen from here)').first().waitFor()
      },
      { locale: 'en-GB', viewport: { width: 1440, height: 900 } },
    )
  })

  test('its sizes stand on the drawing, and the cutting line follows hand and keys', async () => {
    await withApp(
      async ({ page }) => {
        await dropFiles(page, [{ name: 'plate.stl', bytes: writeStlBinary(PLATE) }])
        await waitForCensus(page)
        const panel = await openRow(page, 'plate')
        const figures = panel.locator('.part-drawing .dimension-figure')
        await figures.first().waitFor()
        await expect.poll(() => figures.allTextContents()).toEqual(['60', '30', '10'])
        await panel.getByRole('img', { name: /60 × 30 × 10 mm over all/ }).waitFor()
        await panel.getByRole('button', { name: 'Top', exact: true }).click()
        await expect.poll(() => figures.allTextContents()).toEqual(['60', '30'])

        const line = panel.getByRole('slider', { name: 'Cutting line A–A' })
        await line.focus()
        await page.keyboard.press('ArrowRight')
        const section = panel.getByRole('region', { name: 'Section A–A' })
        await section.getByText(/^31 of 60 mm, 300 mm²/).waitFor()
        await expect.poll(() => line.getAttribute('aria-valuetext')).toBe('31 of 60 mm')

        // From above, the line between the arrows is 60 mm of the plate: a third of it to the left.
        const px = await panel.locator('.dimensions [data-axis="x"] .dimension-arrow').boundingBox()
        const at = await line.boundingBox()
        const [x, y] = [at!.x + at!.width / 2, at!.y + at!.height / 2]
        await page.mouse.move(x, y)
        await page.mouse.down()
        await page.mouse.move(x - px!.width / 3, y, { steps: 4 })
        await page.mouse.up()
        await section.getByText(/^11 of 60 mm, /).waitFor()
      },
      { locale: 'en-GB', viewport: { width: 1440, height: 900 } },
    )
  })

  test('its layer lens shows one layer in the drawing, by slider and keys, with its grams', async () => {
    await withApp(
      async ({ page }) => {
        await dropFiles(page, [{ name: 'plate.stl', bytes: writeStlBinary(PLATE) }])
        await waitForCensus(page)
        const panel = await openRow(page, 'plate')
        const drawn = panel.locator('.drawn-part .lens')
        const button = panel.getByRole('button', { name: 'Layer lens' })
        expect(await drawn.count()).toBe(0)
        await button.click()
        await drawn.waitFor()
        const lens = panel.getByRole('region', { name: 'Layer lens' })
        const slider = lens.getByRole('slider', { name: 'Layer' })
        await slider.focus()
        await page.keyboard.press('Home')
        // A first layer is walls and skin; the section beside is of the same layer.
        const words = /^Layer 1 of 50, 0 to 0\.2 mm up: [\d.]+\sg$/
        await lens.getByText(words).waitFor()
        await expect.poll(() => slider.getAttribute('aria-valuetext')).toMatch(words)
        await expect
          .poll(() => lens.locator('li').allInnerTexts())
          .toEqual([
            expect.stringMatching(/^walls [\d.]+\sg \d+ %$/),
            expect.stringMatching(/^skins [\d.]+\sg \d+ %$/),
          ])
        const section = panel.getByRole('region', { name: 'Section A–A' })
        await section.getByText(/^Layer 1 of 50, /).waitFor()
        // Solid below, sparse in the middle: walls and skin 20.8 mm³ a layer less the bores at most.
        for (let i = 0; i < 9; i++) await page.keyboard.press('ArrowUp')
        await lens.getByText(/^Layer 10 of 50, 1\.8 to 2 mm up: /).waitFor()
        await lens.getByText(/^infill/).waitFor()
        await expect.poll(() => drawn.locator('.cut-hatch-room').count()).toBe(1)
        await expect.poll(() => drawn.locator('.cut-wall').getAttribute('d')).toMatch(/^M/)
        // Seen from the front it is a line at its height, that goes up as the slider does.
        await panel.getByRole('button', { name: 'Front', exact: true }).click()
        const edge = async () => (await drawn.locator('.cut-edge').boundingBox())?.y ?? NaN
        await expect
          .poll(async () => {
            const edgeBox = await drawn.locator('.cut-edge').boundingBox()
            return edgeBox?.height ?? NaN
          })
          .toBeLessThan(4)
        const low = await edge()
        await page.keyboard.press('Tab')
        await slider.focus()
        await page.keyboard.press('End')
        await lens.getByText(/^Layer 50 of 50/).waitFor()
        await expect.poll(edge).toBeLessThan(low - 10)
        await button.click()
        await drawn.waitFor({ state: 'detached' })
        expect(await panel.getByRole('region', { name: 'Layer lens' }).count()).toBe(0)
      },
      { locale: 'en-GB', viewport: { width: 1440, height: 900 } },
    )
  })

  test('section A–A goes where the keyboard moves it, and says in words what is cut', async () => {
    await withApp(
      async ({ page }) => {
        const post = translate(box(10, 30, 20), [50, 0, 10])
        const bytes = writeStlBinary(merge([PLATE, post]))
        await dropFiles(page, [{ name: 'plate.stl', bytes }])
        await waitForCensus(page)
        const panel = await openRow(page, 'plate')
        const section = panel.getByRole('region', { name: 'Section A–A' })
        const slider = section.getByRole('slider', { name: 'Where it is cut' })
        // Across the middle of its 60 mm: 30 × 10 mm of plate.
        await section.getByText(/^30 of 60 mm, 300 mm²: walls \d+\s%, skins \d+\s%/).waitFor()
        await slider.focus()
        await page.keyboard.press('ArrowRight')
        await section.getByText(/^31 of 60 mm, 300 mm²/).waitFor()
        await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('31 of 60 mm')
        await page.keyboard.press('End')
        // Through the post, 30 mm high.
        await section.getByText(/^59\.9 of 60 mm, 900 mm²/).waitFor()
        await section.getByRole('button', { name: 'One layer' }).click()
        await section.getByText(/^Layer \d+ of 150, /).waitFor()
        await section.getByRole('button', { name: 'Along' }).click()
        await section.getByText(/^15 of 30 mm, 800 mm²/).waitFor()
        const picture = section.getByRole('img', { name: /plate, section A–A\. 15 of 30 mm/ })
        await picture.getByText(/^walls/).waitFor()
        await picture.getByText(/^infill/).waitFor()
      },
      { locale: 'en-GB', viewport: { width: 1024, height: 800 } },
    )
  })
})
