import type { Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { sharedApp, withApp } from '../support/app.ts'
import { breaches } from '../support/breaches.ts'
import { goToSheet, loadSandpiper, openRow } from '../support/page.ts'

const MARKS = 'button.help-mark'

describe('help where the word is', { timeout: 300_000 }, () => {
  const onSample = sharedApp(loadSandpiper, { locale: 'en-GB', hasCounted: true })

  test('opens by key, stays while the page is scrolled a little, and goes with Escape', async () => {
    await onSample(async ({ page }) => {
      await page.setViewportSize({ width: 1280, height: 600 })
      await openRow(page, 'Tail boom')
      const mark = page.getByRole('button', { name: 'What is meant by wall' }).first()
      await mark.focus()
      await page.keyboard.press('Enter')
      const card = page.getByRole('note', { name: 'What is meant by wall' })
      await card.waitFor()
      await expect.poll(() => card.innerText()).toMatch(/wall: A line of plastic[\s\S]*no source/)
      await expect.poll(() => mark.getAttribute('aria-expanded')).toBe('true')
      const apart = async () => {
        const [at, from] = [await card.boundingBox(), await mark.boundingBox()]
        return (at?.y ?? NaN) - (from?.y ?? NaN)
      }
      const before = await apart()
      await page.mouse.wheel(0, 60)
      await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(0)
      expect(await card.isVisible()).toBe(true)
      // It moves with its word.
      await expect.poll(() => apart()).toBeCloseTo(before, 0)
      await page.keyboard.press('Escape')
      await card.waitFor({ state: 'detached' })
      await expect
        .poll(() => mark.evaluate((element) => element === document.activeElement))
        .toBe(true)

      await mark.click()
      await card.waitFor()
      await page.getByRole('heading', { name: 'Tail boom' }).first().click()
      await card.waitFor({ state: 'detached' })
    })
  })

  test('stays by a mark in the head, which stands still while the page goes on, also on a phone', async () => {
    await onSample(async ({ page }) => {
      await page.setViewportSize({ width: 360, height: 700 })
      await goToSheet(page, 'frame')
      await page.evaluate(() => {
        scrollTo(0, 0)
      })
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
      await expect.poll(async () => (await apart())[0]).toBeCloseTo(between[0], 0)
      expect(between[0]).toBeCloseTo(before, 0)
      await page.keyboard.press('Escape')
      await card.waitFor({ state: 'detached' })
    })
  })

  test('inside a dialog Escape puts the card away and leaves the dialog', async () => {
    await onSample(async ({ page }) => {
      await page.setViewportSize({ width: 1280, height: 900 })
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
      await dialog.getByRole('button', { name: 'Close' }).click()
    })
  })

  test('on a phone every mark opens by a tap, axe clean, light and dark', async () => {
    await withApp(
      async ({ page }) => {
        await loadSandpiper(page)
        const seen = new Set<string>()
        for (const sheet of ['part', 'aircraft', 'carbon', 'bench'] as const) {
          await goToSheet(page, sheet)
          const marks = page.locator(`.${sheet}-sheet ${MARKS}`)
          await marks.first().waitFor()
          let isFirst = true
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
            // Each card, and once the sheet with a card open.
            expect(await inBoth(page, isFirst ? 'main' : '[role=note]')).toEqual([])
            isFirst = false
            await page.keyboard.press('Escape')
            await card.waitFor({ state: 'detached' })
          }
        }
        expect(seen.size).toBeGreaterThan(8)
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
          390,
        )
      },
      {
        locale: 'en-GB',
        viewport: { width: 390, height: 844 },
        hasTouch: true,
        isMobile: true,
        colorScheme: 'light',
        hasCounted: true,
      },
    )
  })
})

/** What axe finds wrong with a place in light, and then in dark. */
async function inBoth(page: Page, place: string): Promise<readonly string[]> {
  const light = await breaches(page, { place })
  await page.emulateMedia({ colorScheme: 'dark' })
  const dark = await breaches(page, { place, colorsOnly: true })
  await page.emulateMedia({ colorScheme: 'light' })
  return [...light, ...dark]
}
