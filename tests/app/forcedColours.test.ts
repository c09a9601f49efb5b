import { readFileSync } from 'node:fs'
import type { Page } from 'playwright'
import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { goToSheet, loadSandpiper, openSection } from '../support/page.ts'

/**
 * With few colours of the reader's own (CSS Color Adjustment 1, forced colours), nothing may be
 * said by a ground that is taken away, nor written in a colour of ours.
 */
test('ticks, switches and what is written in drawings are in the reader’s own colours', async () => {
  await withApp(
    async ({ page }) => {
      await loadSandpiper(page)
      const find = await openSection(page, 'Find')
      const walls = find.getByRole('checkbox', { name: 'Walls' })
      const box = find.locator('.tick', { has: page.getByText('Walls') }).locator('.tick-box')
      await expect.poll(() => walls.isChecked()).toBe(true)
      const ground = () => box.evaluate((node) => getComputedStyle(node).backgroundColor)
      const ticked = await ground()
      await box.click()
      await expect.poll(() => walls.isChecked()).toBe(false)
      await expect.poll(() => ground()).not.toBe(ticked)
      await openSection(page, 'What if')
      await page.locator('.curve-line').first().waitFor()
      await expect.poll(() => strangeWords(page)).toEqual([])
      const saved = page.waitForEvent('download')
      await page.getByRole('button', { name: /SVG/ }).first().click()
      const svg = readFileSync(await (await saved).path(), 'utf8')
      // The first is the ground, in another colour than what stands on it.
      const [sheet, ...drawn] = [...svg.matchAll(/ fill="(rgb[^"]+)"/g)].map(([, fill]) => fill)
      expect(sheet).not.toBe(drawn.at(-1))
      await openSection(page, 'Carbon twin')
      await page.locator('.season-name').first().waitFor()
      await expect.poll(() => strangeWords(page)).toEqual([])
      // Carbon is told from printed by its edge alone, on the sheet's own ground.
      const fillOf = (bar: string) =>
        page
          .locator(bar)
          .first()
          .evaluate((node) => getComputedStyle(node).fill)
      expect(await fillOf('.season-bar-carbon')).not.toBe(await fillOf('.season-bar'))
      await goToSheet(page, 'frame')
      await page.locator('.item-words').first().waitFor()
      await expect.poll(() => strangeWords(page)).toEqual([])
    },
    { hasCounted: true, forcedColors: 'active', viewport: { width: 1440, height: 900 } },
  )
})

/** Words of drawings in none of the reader's colours. */
function strangeWords(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const probe = document.body.appendChild(document.createElement('span'))
    const own = new Set(
      ['CanvasText', 'Canvas', 'Highlight', 'GrayText'].map((name) => {
        probe.style.color = name
        return getComputedStyle(probe).color
      }),
    )
    probe.remove()
    return [...document.querySelectorAll('svg text')]
      .filter((node) => !own.has(getComputedStyle(node).fill))
      .map((node) => `${node.getAttribute('class') ?? ''}: ${node.textContent}`)
  })
}
