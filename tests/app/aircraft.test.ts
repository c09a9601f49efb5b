import type { Locator, Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { sharedApp } from '../support/app.ts'
import { goToSheet, gramsOf, loadSandpiper, openSection } from '../support/page.ts'

const WIDE = { locale: 'en-GB', viewport: { width: 1280, height: 900 }, hasCounted: true }
/** Every sheet below the list, and what stands on it. */
const SHEETS = [
  ['choose', ['Variants', 'What saves most', 'Find', 'What if', 'Infill', 'Ways to lie']],
  ['carbon', ['Against a carbon frame', 'Carbon twin']],
  ['aircraft', ['Bolts and bought items', 'Mass', 'Balance', 'Flight']],
  ['bench', ['Weigh-in', 'Clock', 'Spares']],
] as const

/** The all-up mass as the Mass line says it, g. Leaves the page on the Aircraft sheet. */
async function allUpG(page: Page): Promise<number> {
  const words = await (await openSection(page, 'Mass')).innerText()
  const found = /([\d,.]+) g all-up/.exec(words)?.[1]
  if (found === undefined) throw new Error(`No all-up mass in “${words}”.`)
  return Number(found.replaceAll(',', ''))
}

function isFocused(place: Locator): Promise<boolean> {
  return place.evaluate((element) => element === document.activeElement)
}

/** A figure of a list of facts by the words before it. */
function factOf(section: Locator, words: string): Locator {
  return section.locator('dl > div', { hasText: words }).locator('dd')
}

describe('the aircraft beyond its printed parts', { timeout: 300_000 }, () => {
  const onSample = sharedApp(loadSandpiper, WIDE)

  test('the demo is there with its pack and motors: the flight line tells minutes', async () => {
    await onSample(async ({ page }) => {
      const flight = await openSection(page, 'Flight')
      const minutes = Number(await flight.locator('.craft-figure').innerText())
      expect(minutes).toBeGreaterThan(1)
      await expect
        .poll(() => factOf(flight, 'All-up weight').innerText())
        .toContain((await allUpG(page)).toFixed(1))
      // Both published rules stand there: thrust with the square of the stick needs more of it.
      const square = Number.parseFloat(await factOf(flight, 'with its square').innerText())
      const straight = Number.parseFloat(await factOf(flight, 'straight with it').innerText())
      expect(straight / 100).toBeCloseTo((square / 100) ** 2, 1)
    })
  })

  test('a screw from the catalogue shows its mass before it is added, and then weighs all-up', async () => {
    await onSample(async ({ page }) => {
      const before = await allUpG(page)
      const section = await openSection(page, 'Bolts and bought items')
      await section.getByRole('button', { name: 'From the catalogue' }).click()
      const form = section.getByRole('group', { name: 'From the catalogue' })
      const pieces = form.getByRole('textbox', { name: 'Pieces' })
      await pieces.fill('100')
      await pieces.press('Tab')
      // 0.9 g each by the published weight chart of M3 × 10 socket head screws.
      await expect
        .poll(() => form.getByRole('status').innerText())
        .toMatch(/0\.90 g each.*published/s)
      await form.getByRole('button', { name: 'Add to the aircraft' }).click()
      await expect.poll(() => allUpG(page)).toBeCloseTo(before + 90, 1)
      await page.getByRole('button', { name: /^Undo: add “Screw M3 × 10/ }).click()
      await expect.poll(() => allUpG(page)).toBeCloseTo(before, 1)
    })
  })

  test('a weighed part replaces its estimate, and the scale’s difference is told', async () => {
    await onSample(async ({ page }) => {
      const before = await allUpG(page)
      // Two parts of its spool were weighed before, so it counted as heavier than reckoned already.
      const countedG = await gramsOf(page, 'Tail boom')
      const bench = await openSection(page, 'Weigh-in')
      const line = bench.locator('.weigh-list li', { hasText: 'Tail boom' })
      const reckoned = Number(/reckoned ([\d.]+) g/.exec(await line.innerText())?.[1])
      expect(countedG).toBeGreaterThan(reckoned)
      const field = line.getByRole('textbox', { name: 'Tail boom on the scale' })
      await field.fill(String(reckoned + 10))
      await field.press('Tab')
      await expect.poll(() => line.innerText()).toMatch(/scale \+\d/)
      // A third more than foretold: asked about, and the other parts stay as they are.
      await expect.poll(() => line.innerText()).toMatch(/far outside/)
      const expectedG = before + reckoned + 10 - countedG
      await expect.poll(async () => Math.abs((await allUpG(page)) - expectedG)).toBeLessThan(0.2)
      // An emptied field goes back to the estimate.
      await openSection(page, 'Weigh-in')
      await field.fill('')
      await field.press('Tab')
      await expect.poll(() => allUpG(page)).toBeCloseTo(before, 1)
    })
  })

  test('flat parts get a twin whose outline downloads in true millimetres', async () => {
    await onSample(async ({ page }) => {
      const twin = await openSection(page, 'Carbon twin')
      const outline = twin.getByRole('button', { name: 'SVG outline of Lower deck' })
      await outline.waitFor()
      const [file] = await Promise.all([page.waitForEvent('download'), outline.click()])
      expect(file.suggestedFilename()).toBe('Lower-deck.svg')
      const parts: Buffer[] = []
      for await (const piece of await file.createReadStream()) parts.push(piece as Buffer)
      const svg = Buffer.concat(parts).toString('utf8')
      const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? []
      expect(svg).toContain(`viewBox="0 0 ${width} ${height}"`)
      expect(Number(width)).toBeGreaterThan(20)
    })
  })

  test('a part placed round a circle gets that many places, all in the drawing', async () => {
    await onSample(async ({ page }) => {
      const balance = await openSection(page, 'Balance')
      await balance.locator('.choice-button').click()
      await page.getByRole('option', { name: 'Damper cup' }).click()
      await balance.getByRole('button', { name: 'Place them round a circle' }).click()
      const radius = balance.getByRole('textbox', { name: 'Radius to its origin' })
      await radius.fill('40')
      await radius.press('Tab')
      await balance.getByRole('button', { name: 'Place 4 evenly' }).click()
      await expect
        .poll(() => balance.locator('.places li', { hasText: 'Damper cup' }).count())
        .toBe(4)
      await balance.locator('.drawings svg').first().waitFor()
      await expect.poll(() => factOf(balance, 'Centre of gravity').innerText()).toMatch(/mm/)
    })
  })

  test('every sheet is gone to by keyboard, shows what stands on it, and is left again', async () => {
    await onSample(async ({ page }) => {
      const links = page.getByRole('navigation', { name: 'Sheets' })
      for (const [sheet, names] of SHEETS) {
        const link = links.locator(`a[href^="#/${sheet}"]`)
        await links.getByRole('link').first().focus()
        for (let i = 0; i < 6 && !(await isFocused(link)); i++) await page.keyboard.press('Tab')
        await expect.poll(() => isFocused(link), { message: sheet }).toBe(true)
        await page.keyboard.press('Enter')
        for (const name of names) {
          await page.getByRole('heading', { name, level: 3, exact: true }).waitFor()
        }
        await expect.poll(() => link.getAttribute('aria-current')).toBe('page')
      }
      await goToSheet(page, 'frame')
      for (const [, names] of SHEETS) {
        for (const name of names) {
          expect(await page.getByRole('heading', { name, level: 3, exact: true }).count()).toBe(0)
        }
      }
    })
  })

  test('a change that crosses a mass line and the limit is said at once', async () => {
    await onSample(async ({ page }) => {
      const mass = await openSection(page, 'Mass')
      const limit = mass.getByRole('textbox', { name: 'All-up at most' })
      await limit.fill('5000')
      await limit.press('Tab')
      const notice = page.locator('.notice')
      await expect.poll(() => notice.innerText()).toContain('Back within your mass limit')

      const items = await openSection(page, 'Bolts and bought items')
      await items.getByRole('button', { name: 'Action camera' }).click()
      const each = items.getByRole('textbox', { name: 'Mass of one' })
      await each.fill('30000')
      await each.press('Tab')
      await expect.poll(() => notice.innerText()).toMatch(/no longer below .*EU 25 kg/)
      await expect.poll(() => notice.innerText()).toContain('Over your mass limit')
      await expect.poll(() => notice.innerText()).toMatch(/Check your authority/)
    })
  })
})
