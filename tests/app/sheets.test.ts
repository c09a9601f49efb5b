import type { Locator, Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { sharedApp, withApp } from '../support/app.ts'
import {
  chooseFromMenu,
  demoFile,
  dropFiles,
  goToSheet,
  gramsOf,
  loadSandpiper,
  openRow,
  openSection,
  rowOf,
  totalGrams,
  waitForCensus,
  type SheetName,
} from '../support/page.ts'

const WIDE = { locale: 'en-GB', viewport: { width: 1440, height: 900 }, hasCounted: true }

/** Every sheet, by the name in its link and in the title of the document. */
const SHEETS: readonly (readonly [SheetName, title: string])[] = [
  ['frame', 'Frame'],
  ['part', 'Part'],
  ['choose', 'Choose'],
  ['carbon', 'Carbon'],
  ['aircraft', 'Aircraft'],
  ['bench', 'Bench'],
]

/** A frame of two parts, kept on this device. */
async function keepTwoParts(page: Page): Promise<void> {
  await dropFiles(page, ['front-arm.stl', 'gps-mast.stl'].map(demoFile))
  await page.locator('tr.row').nth(1).waitFor()
  await waitForCensus(page)
  await page.getByText('Saved on this device').waitFor()
}

/** Comes to an address as from a bookmark: the page is loaded anew. */
async function enter(page: Page, address: string): Promise<void> {
  await page.goto('about:blank')
  await page.goto(address)
}

const hashOf = (page: Page) => new URL(page.url()).hash
const lit = (place: Locator) => expect.poll(() => place.getAttribute('class'))

/** What has the focus: its name on the page, or "nothing". */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement
    if (element === null || element === document.body) return 'nothing'
    return element.getAttribute('aria-label') ?? element.textContent
  })
}

/** Before the sample, and with it; tests of one walk go on in the same visit. */
const onTwoParts = sharedApp(keepTwoParts, WIDE)
const onSample = sharedApp(loadSandpiper, WIDE)

describe('the address of a sheet', { timeout: 300_000 }, () => {
  test('is entered directly, survives a reload and names the document', async () => {
    await onTwoParts(async ({ page, url }) => {
      for (const [sheet, title] of SHEETS) {
        const hash = sheet === 'part' ? '#/part/2' : `#/${sheet}`
        await enter(page, url + hash)
        for (const again of ['entered', 'reloaded']) {
          if (again === 'reloaded') await page.reload()
          await page.locator(`.${sheet}-sheet`).waitFor()
          expect(hashOf(page), again).toBe(hash)
          await expect.poll(() => page.title()).toBe(`${title} · New frame · Preweigh`)
          const link = page.getByRole('navigation', { name: 'Sheets' }).locator('[aria-current]')
          await expect.poll(() => link.innerText()).toContain(title)
        }
      }
      await enter(page, `${url}#/part/2`)
      await page.getByRole('group', { name: 'Settings of gps mast' }).waitFor()
      const name = page.getByRole('textbox', { name: 'Name of the frame' })
      await name.fill('Renamed')
      await name.press('Enter')
      await expect.poll(() => page.title()).toBe('Part · Renamed · Preweigh')
    })
  })

  test('is gone through by the browser’s own back and forward', async () => {
    await onTwoParts(async ({ page }) => {
      await goToSheet(page, 'carbon')
      await openRow(page, 'front arm')
      await page.getByRole('navigation', { name: 'Other parts' }).getByRole('link').click()
      await page.getByRole('group', { name: 'Settings of gps mast' }).waitFor()
      await goToSheet(page, 'bench')
      const trail = ['#/carbon', '#/frame', '#/part/1', '#/part/2', '#/bench']
      for (const hash of trail.slice(0, -1).toReversed()) {
        await page.goBack()
        await expect.poll(() => hashOf(page)).toBe(hash)
        await page.locator(`.${/\w+/.exec(hash)?.[0]}-sheet`).waitFor()
      }
      for (const hash of trail.slice(1)) {
        await page.goForward()
        await expect.poll(() => hashOf(page)).toBe(hash)
        await page.locator(`.${/\w+/.exec(hash)?.[0]}-sheet`).waitFor()
      }
      await page.goBack()
      await page.getByRole('group', { name: 'Settings of gps mast' }).waitFor()
      await page.goBack()
      await page.getByRole('group', { name: 'Settings of front arm' }).waitFor()
    })
  })

  test('that names none shows the frame; one of a part that is not there says so', async () => {
    await onTwoParts(async ({ page, url }) => {
      for (const nonsense of ['#/nowhere', '#part', '#/part/two', '#/frame/../x', '#%']) {
        await enter(page, url + nonsense)
        await page.locator('.frame-sheet').waitFor()
        await rowOf(page, 'gps mast').waitFor()
      }
      await enter(page, `${url}#/part/99`)
      await page.getByRole('heading', { name: 'No item 99' }).waitFor()
      await page.getByText('The list ends at 2.').waitFor()
      await page.getByRole('link', { name: 'Back to the list' }).click()
      await rowOf(page, 'gps mast').waitFor()
    })
  })
})

describe('the focus', { timeout: 300_000 }, () => {
  test('is never lost: not by the sample, not by a sheet that comes or goes', async () => {
    await withApp(async ({ page }) => {
      const sample = page.getByRole('button', { name: /Load Sandpiper/ })
      await sample.focus()
      await page.keyboard.press('Enter')
      await page.locator('tr.row').nth(12).waitFor()
      await expect.poll(() => focused(page)).toBe('Frame, assembled')

      // Along a row's link, to its neighbour and back, all by keyboard.
      await rowOf(page, 'Tail boom').locator('.row-name').focus()
      await page.keyboard.press('Enter')
      await page.getByRole('group', { name: 'Settings of Tail boom' }).waitFor()
      await expect.poll(() => focused(page)).toMatch(/Tail boom/)
      const next = page.getByRole('navigation', { name: 'Other parts' }).getByRole('link').last()
      const words = await next.innerText()
      await next.focus()
      await page.keyboard.press('Enter')
      await page.getByRole('group', { name: /Settings of/ }).waitFor()
      await expect.poll(() => hashOf(page)).toBe('#/part/3')
      await expect.poll(() => focused(page)).not.toBe('nothing')
      expect(words).toContain('3 ')
      for (const at of ['#/part/2', '']) {
        await page.goBack()
        await expect.poll(() => hashOf(page)).toBe(at)
        await page.locator(at === '' ? '.frame-sheet' : '.part-sheet').waitFor()
        await expect.poll(() => focused(page)).not.toBe('nothing')
      }
      for (const [sheet] of SHEETS.toReversed()) {
        await goToSheet(page, sheet)
        await expect.poll(() => focused(page), { message: sheet }).not.toBe('nothing')
      }
    }, WIDE)
  })
})

describe('number, row and piece of an item', { timeout: 300_000 }, () => {
  test('light up together, whichever is pointed at or has the focus, with a mark on the ruler', async () => {
    await onSample(async ({ page }) => {
      await goToSheet(page, 'frame')
      const { row, number, piece, ghost } = places(page, 'Tail boom', 2)
      await number.waitFor()
      const all = async (isLit: boolean) => {
        for (const [place, name] of [
          [row, 'row-lit'],
          [number, 'item-number-lit'],
          [piece, 'piece-lit'],
        ] as const) {
          if (isLit) await lit(place).toMatch(new RegExp(String.raw`\b${name}\b`))
          else await lit(place).not.toMatch(new RegExp(String.raw`\b${name}\b`))
        }
        await expect.poll(() => ghost.count()).toBe(isLit ? 1 : 0)
      }
      const away = page.getByRole('textbox', { name: 'Name of the frame' })
      // The pointer still stands where it loaded the sample, on whatever is drawn there now.
      await away.hover()
      await all(false)
      for (const place of [row.locator('.cell-grams'), number, piece.locator('.tone').first()]) {
        // Where a piece has a hole or lies below another, its middle may be neither.
        await hoverOn(page, place)
        await all(true)
        await away.hover()
        await all(false)
      }
      for (const place of [row.locator('.row-name'), number]) {
        await place.focus()
        await all(true)
        await away.focus()
        await all(false)
      }
    })
  })

  test('are chosen by one press; a second on the number or the piece opens the Part sheet', async () => {
    await onSample(async ({ page }) => {
      await goToSheet(page, 'frame')
      const { row, number, piece } = places(page, 'Tail boom', 2)
      await number.waitFor()
      for (const first of ['number', 'piece', 'row'] as const) {
        // Another one is chosen before.
        await rowOf(page, 'GPS mast').locator('.cell-grams').click()
        await lit(rowOf(page, 'GPS mast')).toContain('row-chosen')
        await lit(row).not.toContain('row-chosen')
        if (first === 'number') await number.click()
        if (first === 'row') await row.locator('.cell-grams').click()
        if (first === 'piece') await pressOn(page, piece.locator('.tone').first())
        await lit(row).toContain('row-chosen')
        await expect.poll(() => number.getAttribute('aria-pressed')).toBe('true')
        await expect.poll(() => page.locator('.item-number[aria-pressed="true"]').count()).toBe(1)
        // Chosen it stays, wherever the pointer is; and the whole set knows.
        await page.getByRole('textbox', { name: 'Name of the frame' }).hover()
        await lit(piece).toContain('piece-lit')
        const links = page.getByRole('navigation', { name: 'Sheets' })
        await expect.poll(() => links.innerText()).toContain('2 Tail boom')
        expect(hashOf(page)).not.toContain('part')

        if (first === 'piece') await pressOn(page, piece.locator('.tone').first())
        else await number.click()
        await page.getByRole('group', { name: 'Settings of Tail boom' }).waitFor()
        expect(hashOf(page)).toBe('#/part/2')
        await goToSheet(page, 'frame')
        await number.waitFor()
      }
    })
  })
})

describe('the ruler', { timeout: 300_000 }, () => {
  test('has a mark where the frame would be without the row pointed at', async () => {
    await onSample(async ({ page }) => {
      await goToSheet(page, 'frame')
      const total = await totalGrams(page)
      const scale = await scaleOf(page)
      const left = await leftOfScale(page)
      for (const [name, item] of [
        ['Tail boom', 2],
        ['GPS mast', 12],
      ] as const) {
        const grams = await gramsOf(page, name)
        await rowOf(page, name).locator('.cell-grams').hover()
        const label = page.locator('.ruler-word-ghost', { hasText: `without ${item} ` })
        const without = async () =>
          Number(/([\d.]+)\sg$/.exec((await label.textContent()) ?? '')?.[1])
        // Three figures of one decimal each.
        await expect
          .poll(async () => Math.abs(total - grams - (await without())))
          .toBeLessThan(0.15)
        // Where its words say between the numbers of the scale, or at the end that it lies beyond.
        const place = Math.max(left, scale(await without()))
        await expect
          .poll(async () => Math.abs(place - (await middleOf(page.locator('.ruler-ghost')))))
          .toBeLessThan(2)
      }
      await expect
        .poll(async () => Math.abs(scale(total) - (await middleOf(page.locator('.ruler-needle')))))
        .toBeLessThan(2)
      await page.getByRole('textbox', { name: 'Name of the frame' }).hover()
      await page.locator('.ruler-ghost').waitFor({ state: 'detached' })
    })
  })

  test('has one where another infill would move the frame, and the frame goes there when it is taken', async () => {
    await onTwoParts(async ({ page }) => {
      await openSection(page, 'Infill')
      const table = page.locator('.choose-table')
      const take = table.getByRole('button', { name: 'Take 80 % infill' })
      await take.focus()
      const total = await totalGrams(page)
      const told = async () => {
        const words = await page.locator('.ruler-word-ghost').textContent()
        return Number(/([\d.]+)\sg$/.exec(words ?? '')?.[1])
      }
      await expect.poll(told).toBeGreaterThan(total)
      const then = await told()
      await page.keyboard.press('Enter')
      await expect.poll(() => totalGrams(page)).toBe(then)
      await expect.poll(() => focused(page)).not.toBe('nothing')
    })
  })

  test('keeps every name inside and apart from the others, on a phone too', async () => {
    await onSample(async ({ page }) => {
      await goToSheet(page, 'frame')
      const carbon = await openSection(page, 'Against a carbon frame')
      const mass = carbon.getByRole('textbox', { name: 'Carbon mass' })
      for (const grams of ['140', '146', '90', '400']) {
        await page.setViewportSize({ width: 1440, height: 900 })
        await mass.fill(grams)
        await mass.press('Tab')
        for (const width of [1920, 1440, 1024, 768, 390, 320]) {
          await page.setViewportSize({ width, height: 900 })
          await expect
            .poll(() => misplacedWords(page), { message: `${grams} g at ${width} px` })
            .toEqual([])
        }
      }
      await page.setViewportSize(WIDE.viewport)
    })
  })
})

describe('another frame', { timeout: 300_000 }, () => {
  test('begins on its first sheet', async () => {
    await onSample(async ({ page }) => {
      await goToSheet(page, 'frame')
      await openRow(page, 'GPS mast')
      await chooseFromMenu(page, /Tern/)
      await expect.poll(() => hashOf(page)).toBe('#/frame')
      await page.locator('.frame-sheet').waitFor()
      await expect.poll(() => page.title()).toMatch(/^Frame · Tern/)
    })
  })
})

/** One item in its three places, and the mark of its absence. */
function places(page: Page, name: string, item: number) {
  return {
    row: rowOf(page, name),
    number: page.locator(`.item-number[data-item="${item}"]`),
    // Faces are drawn in the order of the list.
    piece: page.locator('.assembly .piece').nth(item - 1),
    ghost: page.locator('.ruler-ghost'),
  }
}

/** A point of the screen at which this very shape is on top. */
async function pointOn(place: Locator): Promise<{ readonly x: number; readonly y: number }> {
  await place.scrollIntoViewIfNeeded()
  const found = await place.evaluate((shape) => {
    const { left, top, width, height } = shape.getBoundingClientRect()
    const own = shape.closest('g')
    for (let i = 0; i < 900; i++) {
      const x = left + (width * ((i % 30) + 0.5)) / 30
      const y = top + (height * (Math.floor(i / 30) + 0.5)) / 30
      if (document.elementFromPoint(x, y)?.closest('g.piece') === own) return { x, y }
    }
    return null
  })
  if (found === null) throw new Error('It lies nowhere on top.')
  return found
}

async function hoverOn(page: Page, place: Locator): Promise<void> {
  if ((await place.evaluate((element) => element.closest('g.piece'))) === null) await place.hover()
  else {
    const { x, y } = await pointOn(place)
    await page.mouse.move(x, y)
  }
}

async function pressOn(page: Page, place: Locator): Promise<void> {
  const { x, y } = await pointOn(place)
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.up()
}

async function middleOf(place: Locator): Promise<number> {
  const box = await place.boundingBox()
  if (box === null) throw new Error('Not on screen.')
  return box.x + box.width / 2
}

/** Where the scale begins: at its first number that is not the 0 of a broken one. */
async function leftOfScale(page: Page): Promise<number> {
  return middleOf(page.locator('.totals .ruler-number:not(.ruler-zero)').first())
}

/**
 * From grams to px of the screen, by the first and last but one of the numbers written below the
 * ruler.
 */
async function scaleOf(page: Page): Promise<(grams: number) => number> {
  const numbers = page.locator('.totals .ruler-number:not(.ruler-zero)')
  const at = async (i: number) => {
    const place = numbers.nth(i)
    return [Number(await place.textContent()), await middleOf(place)] as const
  }
  const [[lowG, lowPx], [highG, highPx]] = [await at(1), await at((await numbers.count()) - 2)]
  return (grams) => lowPx + ((grams - lowG) / (highG - lowG)) * (highPx - lowPx)
}

/** Names on the ruler that lie on one another or reach beyond it. */
function misplacedWords(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const ruler = document.querySelector('.totals .ruler')?.getBoundingClientRect()
    if (ruler === undefined) return ['no ruler']
    const words = [...document.querySelectorAll('.totals .ruler-word')].map((place) => ({
      text: place.textContent,
      box: place.getBoundingClientRect(),
    }))
    return words.flatMap(({ text, box }, i) => [
      ...(box.left < ruler.left - 1 || box.right > ruler.right + 1 ? [`${text} leaves it`] : []),
      ...words
        .slice(i + 1)
        .filter(
          ({ box: other }) =>
            other.left < box.right - 1 &&
            other.right > box.left + 1 &&
            other.top < box.bottom - 4 &&
            other.bottom > box.top + 4,
        )
        .map((other) => `${text} lies on ${other.text}`),
    ])
  })
}
