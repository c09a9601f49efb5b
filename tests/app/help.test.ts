import axe from 'axe-core'
import type { Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { goToSheet, openRow, waitForCensus } from '../support/page.ts'

const MARKS = 'button.help-mark'

describe('help where the word is', { timeout: 120_000 }, () => {
  test('opens by key, stays while the page is scrolled a little, and goes with Escape', async () => {
    await withApp(
      async ({ page }) => {
        await page.getByRole('button', { name: /Load Sandpiper/ }).click()
        await waitForCensus(page)
        await openRow(page, 'Tail boom')
        const mark = page.getByRole('button', { name: 'What is meant by wall' }).first()
        await mark.focus()
        await page.keyboard.press('Enter')
        const card = page.getByRole('note', { name: 'What is meant by wall' })
        await card.waitFor()
        expect(await card.innerText()).toMatch(/wall: A line of plastic[\s\S]*no source/)
        expect(await mark.getAttribute('aria-expanded')).toBe('true')
        const apart = async () => {
          const [at, from] = [await card.boundingBox(), await mark.boundingBox()]
          return (at?.y ?? NaN) - (from?.y ?? NaN)
        }
        const before = await apart()
        await page.mouse.wheel(0, 60)
        await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(0)
        expect(await card.isVisible()).toBe(true)
        // It moves with its word.
        expect(await apart()).toBeCloseTo(before, 0)
        await page.keyboard.press('Escape')
        await card.waitFor({ state: 'detached' })
        expect(await mark.evaluate((element) => element === document.activeElement)).toBe(true)

        await mark.click()
        await card.waitFor()
        await page.getByRole('heading', { name: 'Tail boom' }).first().click()
        await card.waitFor({ state: 'detached' })
      },
      { locale: 'en-GB', viewport: { width: 1280, height: 600 } },
    )
  })

  test('stays by a mark in the head, which stands still while the page goes on, also on a phone', async () => {
    await withApp(
      async ({ page }) => {
        await page.getByRole('button', { name: /Load Sandpiper/ }).click()
        await waitForCensus(page)
        await page.locator(`.totals ${MARKS}`).first().click()
        const card = page.getByRole('note')
        await card.waitFor()
        const apart = async () => {
          const from = await page.locator(`.totals ${MARKS}`).first().boundingBox()
          const at = await card.boundingBox()
          return [(at?.y ?? NaN) - (from?.y ?? NaN), at!.x, at!.x + at!.width] as const
        }
        const [before, left, right] = await apart()
        expect(left).toBeGreaterThanOrEqual(0)
        expect(right).toBeLessThanOrEqual(360)
        await page.mouse.wheel(0, 400)
        await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(300)
        await page.mouse.wheel(0, 200)
        await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(500)
        const between = await apart()
        await page.mouse.wheel(0, 100)
        await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(600)
        // The head stands still by then, and the card with it; before, it was as far from its mark.
        expect((await apart())[0]).toBeCloseTo(between[0], 0)
        expect(between[0]).toBeCloseTo(before, 0)
      },
      { locale: 'en-GB', viewport: { width: 360, height: 700 } },
    )
  })

  test('inside a dialog Escape puts the card away and leaves the dialog', async () => {
    await withApp(
      async ({ page }) => {
        await page.getByRole('button', { name: /Load Sandpiper/ }).click()
        await waitForCensus(page)
        await goToSheet(page, 'frame')
        await page.getByRole('button', { name: /^Printer: / }).click()
        const dialog = page.getByRole('dialog', { name: 'Printer' })
        await dialog.getByRole('button', { name: /habits/ }).click()
        await dialog.getByRole('button', { name: 'What is meant by hold' }).click()
        const card = page.getByRole('note', { name: 'What is meant by hold' })
        await card.waitFor()
        await page.keyboard.press('Escape')
        await card.waitFor({ state: 'detached' })
        expect(await dialog.isVisible()).toBe(true)
      },
      { locale: 'en-GB', viewport: { width: 1280, height: 900 } },
    )
  })

  test.each(['light', 'dark'] as const)(
    'on a phone every mark opens by a tap, axe clean, %s',
    async (colorScheme) => {
      await withApp(
        async ({ page }) => {
          await page.getByRole('button', { name: /Load Sandpiper/ }).click()
          await waitForCensus(page)
          const seen = new Set<string>()
          for (const sheet of ['part', 'aircraft', 'carbon', 'bench'] as const) {
            await goToSheet(page, sheet)
            const marks = page.locator(`.${sheet}-sheet ${MARKS}`)
            await marks.first().waitFor()
            for (const mark of await marks.all()) {
              if (!(await mark.isVisible())) continue
              await mark.tap()
              const card = page.getByRole('note')
              await card.waitFor()
              seen.add(await card.innerText())
              const [box, target] = [await card.boundingBox(), await mark.boundingBox()]
              expect(box?.x).toBeGreaterThanOrEqual(0)
              expect((box?.x ?? 0) + (box?.width ?? 999)).toBeLessThanOrEqual(390)
              expect(Math.min(target?.width ?? 0, target?.height ?? 0)).toBeGreaterThanOrEqual(24)
              if (seen.size % 5 === 1) expect(await faults(page)).toEqual([])
              await page.keyboard.press('Escape')
              await card.waitFor({ state: 'detached' })
            }
          }
          expect(seen.size).toBeGreaterThan(8)
          expect(
            await page.evaluate(() => document.documentElement.scrollWidth),
          ).toBeLessThanOrEqual(390)
        },
        {
          locale: 'en-GB',
          viewport: { width: 390, height: 844 },
          hasTouch: true,
          isMobile: true,
          colorScheme,
        },
      )
    },
  )
})

/** What axe finds wrong with the card and the sheet behind it. */
async function faults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source)
  return page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as { axe: typeof axe }).axe.run('main', {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'],
    })
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' | ')}`)
  })
}
