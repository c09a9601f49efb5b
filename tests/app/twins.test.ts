import type { Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { sharedApp } from '../support/app.ts'
import { goToSheet, loadSandpiper, openRow, openSection } from '../support/page.ts'

/**
 * What is wrong with the pictures on show: without a name, without a text that says the same, or
 * with a figure that this text does not have. Figures of axes are left out: they measure, and say
 * nothing of the frame. Looked for in the place of this selector: a dialog hides all that is behind.
 */
function faultyPictures(page: Page, place = 'body'): Promise<readonly string[]> {
  return page.evaluate((within) => {
    const figuresOf = (words: string): string[] => words.match(/\d[\d.:]*/g) ?? []
    const wordsOf = (node: Element | null): string => {
      // Cells stand apart: their text alone would run together.
      const texts = document.createTreeWalker(
        node ?? document.createElement('i'),
        NodeFilter.SHOW_TEXT,
      )
      const words: string[] = []
      while (texts.nextNode() !== null) {
        // A picture's own words do not say it twice.
        if (texts.currentNode.parentElement?.closest('svg') === null)
          words.push(texts.currentNode.textContent ?? '')
      }
      return words.join(' ')
    }
    const faults: string[] = []
    const pictures = [
      ...(document
        .querySelector(within)
        ?.querySelectorAll<SVGElement | HTMLCanvasElement>('svg, canvas') ?? []),
    ]
    for (const picture of pictures.filter((one) => one.checkVisibility())) {
      const name = picture.getAttribute('aria-label') ?? ''
      const details = picture.getAttribute('aria-details')
      const twin = details === null ? null : document.getElementById(details)
      const isHidden = picture.closest('[aria-hidden="true"]') !== null
      const who = `${name === '' ? picture.outerHTML.slice(0, 80) : name}:`
      // One that is passed over leaves its words to what it stands in.
      const own = isHidden ? picture.closest('.totals, tr, li, figure, section, .drawn-part') : twin
      const pressed = [...picture.querySelectorAll('[role=button], [role=slider]')]
      // One that is only taken hold of says by the slider beside it where it is.
      const beside = isHidden ? [...(picture.parentElement?.children ?? [])] : []
      const told = [
        name,
        wordsOf(own),
        ...pressed.map((one) => one.getAttribute('aria-label') ?? ''),
        ...beside.map((one) => one.getAttribute('aria-valuetext') ?? ''),
      ].join(' ')
      if (!isHidden && name === '') faults.push(`${who} no name`)
      if (details !== null && !(twin?.textContent ?? '').trim()) faults.push(`${who} twin is empty`)
      if (twin !== null && twin.closest('[aria-hidden="true"], [hidden]') !== null)
        faults.push(`${who} twin hidden`)
      if (figuresOf(told).length === 0) faults.push(`${who} nothing says the same`)
      const said = new Set(figuresOf(told))
      const axes = '.chart-number, .ruler-number, .scale-tick, .draw-scale + text'
      for (const text of picture.querySelectorAll('text')) {
        if (text.matches(axes) || text.closest('.chart-tick') !== null) continue
        for (const figure of figuresOf(text.textContent))
          if (!said.has(figure)) faults.push(`${who} ${figure} only in the picture`)
      }
    }
    return faults
  }, place)
}

describe('every picture has a text that says the same', { timeout: 240_000 }, () => {
  const onPage = sharedApp(loadSandpiper, {
    locale: 'en-GB',
    viewport: { width: 1440, height: 900 },
    hasCounted: true,
  })

  test.each([
    ['Frame', (page: Page) => goToSheet(page, 'frame'), '.item-number'],
    ['Part', (page: Page) => openRow(page, 'Tail boom'), '.section-drawing'],
    ['Choose', (page: Page) => openSection(page, 'What if'), '.curve-line'],
    ['Carbon', (page: Page) => openSection(page, 'Carbon twin'), '.season-name'],
    ['Aircraft', (page: Page) => openSection(page, 'Balance'), '.draw-name'],
    ['Bench', (page: Page) => openSection(page, 'Weigh-in'), '.drill-number'],
  ] as const)('on the %s sheet', async (_, go, drawn) => {
    await onPage(async ({ page }) => {
      await go(page)
      await page.locator(drawn).first().waitFor()
      await expect.poll(() => page.locator('main svg').count()).toBeGreaterThan(0)
      await expect.poll(() => faultyPictures(page)).toEqual([])
    })
  })

  test('of how a part gives, breaks and rings', async () => {
    await onPage(async ({ page }) => {
      const panel = await openRow(page, 'Tail boom')
      const name = 'How it gives, breaks and rings'
      await panel.getByRole('button', { name }).click()
      const block = panel.getByRole('region', { name })
      await block.getByRole('button', { name: /^Reckon it/ }).click()
      for (const drawn of ['.stiffness-line svg', '.stiffness-lens svg'])
        await block.locator(drawn).waitFor()
      expect(await faultyPictures(page)).toEqual([])
    })
  })

  test('of putting pieces together, and of a joint', async () => {
    await onPage(async ({ page }) => {
      const sheet = await goToSheet(page, 'frame')
      await sheet.getByRole('button', { name: 'Put it together' }).click()
      await sheet
        .getByRole('button', { name: /^Joint of / })
        .first()
        .click()
      await sheet.locator('.grip-picture svg').waitFor()
      expect(await faultyPictures(page)).toEqual([])
      await sheet.getByRole('button', { name: 'Done, show assembled' }).click()
    })
  })

  test('of the scale, before and after a reading', async () => {
    await onPage(async ({ page }) => {
      const section = await openSection(page, 'Weigh-in')
      await section.getByRole('button', { name: 'Piece by piece at the scale' }).click()
      const dialog = page.getByRole('dialog', { name: 'Weigh-in' })
      await dialog.locator('.scale-piece path').first().waitFor()
      await dialog.locator('.scale-band').waitFor()
      expect(await faultyPictures(page, '.scale-sheet')).toEqual([])
      await dialog.locator('.scale-reading input').fill('20')
      await dialog.locator('.scale-mark-words').waitFor()
      expect(await faultyPictures(page, '.scale-sheet')).toEqual([])
      await dialog.getByRole('button', { name: 'Done' }).click()
    })
  })
})
