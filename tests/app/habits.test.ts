import type { Locator, Page } from 'playwright'
import { expect, test } from 'vitest'
import { HABIT_DEFAULTS } from '../../src/core/model/habits.ts'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import { dropFiles, openPrinter, rowOf, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const VIEWPORT = { width: 1280, height: 900 }

async function gramsIn(page: Page, mark: ',' | '.'): Promise<number> {
  const words = await rowOf(page, 'bar').locator('.cell-grams .figure').innerText()
  return Number(words.replaceAll(new RegExp(String.raw`[^\d${mark}]`, 'g'), '').replace(mark, '.'))
}

async function openHabits(page: Page): Promise<Locator> {
  await openPrinter(page)
  const habits = page.getByRole('region', { name: 'Habits of laying' })
  await habits.getByRole('button', { name: 'Show habits' }).click()
  await habits.getByRole('img').first().waitFor()
  return habits
}

async function typeIn(habits: Locator, name: string, value: string): Promise<void> {
  const field = habits.getByRole('textbox', { name })
  await field.fill(value)
  await field.press('Enter')
}

test.each([
  ['en-GB', '0', '0.3', '.'],
  ['de-DE', '0', '0,3', ','],
  ['fr-FR', '0', '0,3', ','],
] as const)(
  'habits are typed in %s, change the grams, and are kept with the printer',
  { timeout: 300_000 },
  async (locale, none, wide, mark) => {
    await withApp(
      async ({ page }) => {
        await dropFiles(page, [{ name: 'bar.stl', bytes: writeStlBinary(box(60, 24, 16)) }])
        await waitForCensus(page)
        const usual = await gramsIn(page, mark)
        const habits = await openHabits(page)
        await expect
          .poll(() => habits.getByRole('img').count())
          .toBe(Object.keys(HABIT_DEFAULTS).length)
        // Numbers and choices alike.
        for (const name of ['Overlap', 'Line shape']) {
          const item = habits.getByRole('listitem').filter({ hasText: name })
          await item
            .getByText(/Not knowing it: ±/)
            .first()
            .waitFor()
        }

        // Nothing joined lays less; only figures follow. Skins and infill far over the walls lay
        // more, counted anew.
        await typeIn(habits, 'Joined ends', none)
        await habits.getByText('One of yours is known').waitFor()
        await typeIn(habits, 'Overlap', '7')
        await habits.getByRole('alert').getByText('Takes 0 to 1').waitFor()
        await typeIn(habits, 'Overlap', wide)
        await habits.getByText('2 of yours are known').waitFor()
        await habits.getByRole('button', { name: /Line shape/ }).click()
        await page.getByRole('option', { name: 'Round' }).click()
        await habits.getByText('3 of yours are known').waitFor()
        await page.getByRole('button', { name: 'Close' }).click()
        await waitForCensus(page)
        const told = await gramsIn(page, mark)
        expect(told).not.toBe(usual)

        await page.getByText('Saved on this device').waitFor()
        await page.reload()
        await waitForCensus(page)
        await expect.poll(() => gramsIn(page, mark)).toBe(told)
        const again = await openHabits(page)
        await expect
          .poll(() => again.getByRole('textbox', { name: 'Overlap' }).inputValue())
          .toBe(wide)
        await typeIn(again, 'Joined ends', '')
        await again.getByText('2 of yours are known').waitFor()
        await again.getByRole('button', { name: 'Forget them all' }).click()
        await again.getByText('None of yours is known').waitFor()
        await page.getByRole('button', { name: 'Close' }).click()
        await waitForCensus(page)
        await expect.poll(() => gramsIn(page, mark)).toBe(usual)
      },
      { locale, viewport: VIEWPORT },
    )
  },
)
