import type { Locator, Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { dropMeshes, goToSheet, openRow } from '../support/page.ts'
import { box } from '../support/meshes.ts'

/** Two plain blocks: flat ones, whose layers are counted in a moment. */
async function twoBlocks(page: Page): Promise<Locator> {
  await dropMeshes(page, { arm: box(80, 14, 6), deck: box(60, 40, 4) })
  await page.getByRole('region', { name: 'Total of the frame' }).waitFor()
  return goToSheet(page, 'choose')
}

const section = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

/** The one printed mass, as the head has it. */
async function printed(page: Page): Promise<number> {
  const text = await page.locator('.totals').innerText()
  return Number(/[\d.]+/.exec(text)?.[0])
}

async function typeInto(place: Locator, label: RegExp, text: string): Promise<void> {
  const field = place.getByRole('textbox', { name: label })
  await field.fill(text)
  await field.press('Enter')
}

/**
 * Presses a button, and once more as soon as it says `words`: from within the page, since what it
 * began may be done before a hand outside has found it again.
 */
async function pressUntil(button: Locator, words: string): Promise<void> {
  await button.evaluate(
    (node: HTMLElement, wanted) =>
      new Promise<void>((resolve) => {
        const watch = new MutationObserver(() => {
          if (node.textContent !== wanted) return
          watch.disconnect()
          node.click()
          resolve()
        })
        watch.observe(node, { childList: true, characterData: true, subtree: true })
        node.click()
      }),
    words,
  )
}

describe('Choose', () => {
  test('finds recipes within what is asked, takes one whole, and undoes it in one step', async () => {
    await withApp(async ({ page }) => {
      await twoBlocks(page)
      const find = section(page, 'Find')
      const before = await printed(page)
      await typeInto(find, /^Lighter by/, '1')
      await find.getByRole('button', { name: 'Find recipes' }).click()
      await find.getByText(/^\d+ solutions?\.$/).waitFor({ timeout: 180_000 })
      const looks = find.getByRole('button', { name: /^Look at/ })
      await expect.poll(() => looks.count()).toBeGreaterThan(3)
      // Nothing is changed by looking.
      await looks.first().click()
      expect(await printed(page)).toBe(before)
      await find.getByRole('button', { name: 'Take this solution' }).click()
      await expect.poll(() => printed(page), { timeout: 30_000 }).toBeLessThanOrEqual(before - 0.95)
      const said = /Look at ([\d.]+)/.exec((await looks.first().getAttribute('aria-label')) ?? '')
      await expect.poll(() => printed(page)).toBeCloseTo(Number(said?.[1]), 1)
      await page.keyboard.press('Control+z')
      await expect.poll(() => printed(page)).toBe(before)
    })
  })

  test('says what stands in the way, and goes on after a stop', async () => {
    await withApp(async ({ page }) => {
      await twoBlocks(page)
      const find = section(page, 'Find')
      await typeInto(find, /^Printed, at most/, '1')
      await pressUntil(find.getByRole('button', { name: 'Find recipes' }), 'Stop')
      await find.getByText('Stopped; what was counted is kept.').waitFor()
      await find.getByRole('button', { name: 'Go on' }).click()
      await find.getByText(/^Grams stand in the way: .* the least is [\d.]+\sg/).waitFor({
        timeout: 180_000,
      })
      await find.getByText('Nothing found.').waitFor()
      expect(await find.getByRole('button', { name: /^Look at/ }).count()).toBe(0)

      // How far one part gives, by its solid model: nothing gives so little, and that is told.
      await typeInto(find, /^Printed, at most/, '')
      await find.getByText(/^How parts give: nothing asked/).click()
      await typeInto(find, /^arm gives at most/, '0.001')
      await find.getByRole('button', { name: 'Find recipes' }).click()
      await find.getByText(/^How far arm gives stands in the way: .* the least is/).waitFor({
        timeout: 180_000,
      })
      await typeInto(find, /^arm gives at most/, '900')
      await find.getByRole('button', { name: 'Find recipes' }).click()
      const look = find.getByRole('button', { name: /^Look at/ })
      await look.first().click({ timeout: 180_000 })
      // Told by scaled figures, and solved again as the solution prints it: near one another.
      const row = find.getByRole('row', { name: /^arm gives / })
      await row.getByText('kept, whatever its range').waitFor({ timeout: 180_000 })
      const [scaled, solved] = await Promise.all(
        [1, 2].map(async (n) =>
          Number.parseFloat(
            await row
              .getByRole('cell')
              .nth(n - 1)
              .innerText(),
          ),
        ),
      )
      expect(solved! / scaled!).toBeGreaterThan(0.9)
      expect(solved! / scaled!).toBeLessThan(1.1)
      await row.getByText(/^at most 900\smm/).waitFor()
      // Looked at again once it is taken, nothing is solved anew.
      await find.getByRole('button', { name: 'Take this solution' }).click()
      await row.getByText('kept, whatever its range').waitFor()
    })
  })

  test('keeps what is locked, and asks a floor of stiffness', async () => {
    await withApp(async ({ page }) => {
      await twoBlocks(page)
      const find = section(page, 'Find')
      await find.getByText(/^Parts: all 2 may change/).click()
      await find.getByRole('checkbox', { name: 'arm may change' }).press('Space')
      await typeInto(find, /^Stiffness kept/, '100')
      await find.getByRole('button', { name: 'Find recipes' }).click()
      await find.getByText(/^\d+ solutions?\.$/).waitFor({ timeout: 180_000 })
      await find
        .getByRole('button', { name: /^Look at/ })
        .last()
        .click()
      await expect.poll(() => find.locator('.front-look').innerText()).not.toContain('arm:')
      for (const cell of await find.locator('.front-table tbody td:nth-child(4)').allInnerTexts()) {
        expect(Number.parseFloat(cell)).toBeGreaterThanOrEqual(100)
      }
    })
  })

  test('lists what saves most, takes one, and shows the next', async () => {
    await withApp(async ({ page }) => {
      await twoBlocks(page)
      const saves = section(page, 'What saves most')
      await saves.getByRole('button', { name: /^Count walls/ }).click()
      await saves
        .getByRole('button', { name: /^Take .* walls of deck/ })
        .waitFor({ timeout: 120_000 })
      // Grams, minutes and money of a step are those that the part's own sheet has.
      const row = saves.getByRole('row').filter({ hasText: 'arm' }).filter({ hasText: '% infill' })
      const [grams, minutes, money] = await Promise.all(
        ['strong', 'td:nth-of-type(4)', 'td:nth-of-type(5)'].map((cell) =>
          row.first().locator(cell).innerText(),
        ),
      )
      const arm = await openRow(page, 'arm')
      await arm
        .getByRole('button', { name: `infill, 10 less ${grams} g ${minutes} min ${money}` })
        .waitFor()
      await goToSheet(page, 'choose')
      const before = await printed(page)
      const first = saves.getByRole('button', { name: /^Take / }).first()
      const name = (await first.getAttribute('aria-label')) ?? ''
      await first.focus()
      await page.keyboard.press('Enter')
      await saves.getByText(/^Taken: /).waitFor()
      const saved = Number(/−([\d.]+)/.exec(name)?.[1])
      await expect.poll(() => printed(page), { timeout: 30_000 }).toBeCloseTo(before - saved, 0)
      // The list follows once there is time for it.
      await saves.getByRole('button', { name, exact: true }).waitFor({ state: 'detached' })
    })
  })

  test('draws what if, and its sliders change the part from the keyboard', async () => {
    await withApp(async ({ page }) => {
      await twoBlocks(page)
      const whatIf = section(page, 'What if')
      const infill = whatIf.getByRole('slider', { name: 'Infill' })
      await infill.waitFor({ timeout: 60_000 })
      const before = await printed(page)
      const words = (await infill.getAttribute('aria-valuetext')) ?? ''
      expect(words).toMatch(/^30 %, [\d.]+\sg$/)
      await infill.focus()
      await page.keyboard.press('ArrowLeft')
      await expect.poll(() => printed(page)).toBeLessThan(before)
      await expect.poll(() => infill.getAttribute('aria-valuetext')).toMatch(/^25 %/)
      await expect.poll(() => infill.evaluate((one) => one === document.activeElement)).toBe(true)
      // Six measures once it is looked at as a beam too, and the figures behind them.
      await whatIf.getByRole('slider', { name: 'Walls' }).waitFor({ timeout: 120_000 })
      await expect.poll(() => whatIf.locator('figure').count(), { timeout: 60_000 }).toBe(6)
      await whatIf.getByText('All figures as a table').click()
      await whatIf.getByRole('button', { name: 'Infill 50 %', exact: true }).click()
      await expect.poll(() => printed(page)).toBeGreaterThan(before)
    })
  })

  test('drags the present point of a curve to another value', async () => {
    await withApp(async ({ page }) => {
      await twoBlocks(page)
      const whatIf = section(page, 'What if')
      const infill = whatIf.getByRole('slider', { name: 'Infill' })
      await infill.waitFor({ timeout: 60_000 })
      // Until all of it is there it may still move.
      await whatIf.getByText(/first tone as a beam/).waitFor({ timeout: 60_000 })
      await infill.scrollIntoViewIfNeeded()
      const points = infill.locator('circle')
      const from = await infill.locator('.curve-now').boundingBox()
      const to = await points.last().boundingBox()
      await page.mouse.move(from!.x + 4, from!.y + 4)
      await page.mouse.down()
      await page.mouse.move(to!.x + 3, to!.y + 3, { steps: 4 })
      await page.mouse.up()
      await expect.poll(() => infill.getAttribute('aria-valuetext')).toMatch(/^100 %/)
    })
  })

  test('keeps variants with the frame, and takes one whole or part by part', async () => {
    await withApp(async ({ page }) => {
      await twoBlocks(page)
      const variants = section(page, 'Variants')
      const before = await printed(page)
      await variants.getByRole('button', { name: 'Keep what stands as a variant' }).click()
      await typeInto(variants, /^Name/, 'Heavy')
      const infill = section(page, 'What if').getByRole('slider', { name: 'Infill' })
      await infill.waitFor({ timeout: 60_000 })
      await infill.focus()
      await page.keyboard.press('Home')
      await expect.poll(() => printed(page)).toBeLessThan(before)
      const lighter = await printed(page)
      await variants.getByRole('button', { name: 'Take 30 % infill of Heavy for arm' }).click()
      await expect.poll(() => printed(page)).toBe(before)
      await page.keyboard.press('Control+z')
      await expect.poll(() => printed(page)).toBe(lighter)
      // Kept in this browser.
      await page
        .getByText(/^saved/i)
        .first()
        .waitFor()
      await page.reload()
      await goToSheet(page, 'choose')
      await section(page, 'Variants')
        .getByRole('button', { name: 'Take variant Heavy whole' })
        .click({ timeout: 60_000 })
      await expect.poll(() => printed(page), { timeout: 30_000 }).toBe(before)
      await section(page, 'Variants').getByRole('button', { name: 'Remove variant Heavy' }).click()
      await section(page, 'Variants').getByRole('table').waitFor({ state: 'detached' })
    })
  })
})
