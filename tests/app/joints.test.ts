import type { Locator, Page } from 'playwright'
import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { blind } from '../support/jointShapes.ts'
import { boredPlate, straight, type Boring } from '../support/boredPlate.ts'
import { prism, rectangle } from '../support/meshes.ts'
import { dropFiles, goToSheet, waitForCensus, type DroppedFile } from '../support/page.ts'
import { circle, type Loop, type Point } from '../support/polygon.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/** Two holes 12 mm apart on each of four spokes. */
const SPOKES = [45, 135, 225, 315].flatMap((degrees): Point[] => {
  const angle = (degrees * Math.PI) / 180
  return [30, 42].map((r): Point => [r * Math.cos(angle), r * Math.sin(angle)])
})
/** Three that only one turn lays on themselves. */
const ODD: readonly Point[] = [
  [-14, -9],
  [13, -6],
  [-8, 12],
]

const drilled = (points: readonly Point[], heightMm: number): readonly Boring[] =>
  points.map(([x, y]) => straight(x, y, 1.7, heightMm, 24))

const stl = (name: string, outline: Loop, heightMm: number, borings: readonly Boring[]) => ({
  name,
  bytes: writeStlBinary(boredPlate(outline, heightMm, borings)),
})

/** A frame of eight files: two decks, four arms between them, a tray on top and a mast in it. */
function eightFiles(): readonly DroppedFile[] {
  const arm = (name: string, longMm: number) =>
    stl(
      name,
      rectangle(longMm, 14),
      6,
      drilled(
        [
          [8, 7],
          [20, 7],
        ],
        6,
      ),
    )
  const mast = writeStlBinary(prism(circle(6, 48), 60))
  return [
    stl('lower.stl', circle(55, 64), 3, drilled(SPOKES, 3)),
    arm('front.stl', 90),
    arm('left.stl', 94),
    arm('right.stl', 98),
    arm('rear.stl', 102),
    stl('upper.stl', circle(50, 64), 3, drilled([...SPOKES, ...ODD], 3)),
    stl('tray.stl', rectangleAbout(40, 34), 14, [...drilled(ODD, 14), blind(4, 2, 6.1, 11, 48)]),
    { name: 'mast.stl', bytes: mast },
  ]
}

function rectangleAbout(wide: number, deep: number): Loop {
  return rectangle(wide, deep).map(([x, y]): Point => [x - wide / 2, y - deep / 2])
}

async function beginAssembling(page: Page): Promise<Locator> {
  await waitForCensus(page)
  const sheet = await goToSheet(page, 'frame')
  await sheet.getByRole('button', { name: 'Put it together' }).click()
  return sheet
}

const looseIn = (sheet: Locator) =>
  sheet.getByRole('group', { name: 'Loose pieces' }).getByRole('button')

/** Rows of the table of joints. */
const jointsIn = (sheet: Locator) => sheet.getByRole('button', { name: /^Joint of / })

test('eight files are put together by their offers alone, kept, and undone', async () => {
  await withApp(async ({ page }) => {
    await dropFiles(page, eightFiles())
    const sheet = await beginAssembling(page)
    const loose = looseIn(sheet)
    const ways = sheet.getByRole('radiogroup', { name: 'Ways to join it' }).getByRole('radio')
    await ways.first().waitFor()
    expect(await jointsIn(sheet).count()).toBe(0)
    for (let left = 7; left > 0; left--) {
      await expect.poll(() => loose.count()).toBe(left)
      await ways.first().waitFor()
      // A handful, never hundreds.
      await expect.poll(() => ways.count()).toBeLessThanOrEqual(6)
      await sheet.getByRole('button', { name: 'Join', exact: true }).click()
      await loose.nth(left - 1).waitFor({ state: 'detached' })
    }
    await sheet.getByText('Every piece stands').waitFor()
    // Four arms, a deck on all four of them, a tray, a mast.
    await expect.poll(() => jointsIn(sheet).count()).toBe(10)
    await expect.poll(() => sheet.locator('.joint-strained').count()).toBe(0)
    await page.keyboard.press('Control+z')
    await expect.poll(() => loose.count()).toBe(1)
    await page.keyboard.press('Control+Shift+z')
    await expect.poll(() => loose.count()).toBe(0)
    await page.getByText('Saved on this device').waitFor()
    await page.reload()
    const again = await beginAssembling(page)
    await again.getByText('Every piece stands').waitFor()
    await expect.poll(() => jointsIn(again).count()).toBe(10)
    // One screw goes through deck, arm and deck: 3 + 6 + 3, a locknut of 4 (ISO 7040) and a turn
    // beyond it.
    await again.getByText('2 × M3 × 20').first().waitFor()
  })
})

test('the same by keyboard alone: pieces, offers, the turn of one over, and what is said of it', async () => {
  await withApp(async ({ page }) => {
    await dropFiles(page, eightFiles())
    const sheet = await beginAssembling(page)
    const loose = looseIn(sheet)
    const said = sheet.getByRole('status').filter({ hasText: /^front on lower/ })
    await said.waitFor({ state: 'attached' })
    await expect
      .poll(() => said.textContent())
      .toMatch(/^front on lower, on top, 2 holes 12 mm apart, M3 by \d+, offer 1 of \d$/)
    await page.keyboard.press('F6')
    await page.keyboard.press('ArrowRight')
    await sheet
      .getByRole('status')
      .filter({ hasText: /^left on lower/ })
      .waitFor({ state: 'attached' })
    await page.keyboard.press('ArrowLeft')
    const focusIn = (group: 'radiogroup' | 'group') =>
      expect.poll(() =>
        page.evaluate(
          (role) => document.activeElement?.closest(`[role=${role}]`)?.getAttribute('aria-label'),
          group,
        ),
      )
    for (let left = 7; left > 0; left--) {
      await focusIn('group').toBe('Loose pieces')
      await page.keyboard.press('Enter')
      // A worker looks for them: focus goes on as soon as they are told.
      await focusIn('radiogroup').toBe('Ways to join it')
      // The turn of one over is tried where it is not the last that is asked for.
      const tries = left > 4 ? ['ArrowRight', 't', 'ArrowLeft'] : []
      for (const key of [...tries, 'Enter']) await page.keyboard.press(key)
      await expect.poll(() => loose.count()).toBe(left - 1)
    }
    await sheet.getByText('Every piece stands').waitFor()
    await expect.poll(() => jointsIn(sheet).count()).toBe(10)
    await page.keyboard.press('Control+z')
    await expect.poll(() => loose.count()).toBe(1)
  })
})

test('the same by hand: hole on hole, shaft in bore, changed, turned over and taken out', async () => {
  await withApp(async ({ page }) => {
    await dropFiles(page, eightFiles())
    const sheet = await beginAssembling(page)
    await sheet.getByRole('button', { name: 'Join it by hand' }).click()
    const hand = sheet.getByRole('group', { name: 'Joined by hand' })
    const hole = (piece: string, words: RegExp) =>
      hand
        .getByRole('list', { name: `On ${piece}` })
        .getByRole('button', { name: words })
        .first()
    const spokes = (place: number, z: number, way: string) =>
      [2 * place, 2 * place + 1].map((k) => {
        const [x, y] = SPOKES[k]!.map((mm) => mm.toFixed(1).replace('-', '−')) as [string, string]
        return new RegExp(`^hole 3.4 mm at ${x}, ${y}, ${z} mm, to ${way}$`)
      })
    const arm = (z: number, way: string) =>
      [8, 20].map((x) => new RegExp(`^hole 3.4 mm at ${x}, 7, ${z} mm, to ${way}$`))
    const odd = (z: number, way: string) =>
      ODD.slice(0, 2).map(([x, y]) => {
        const at = [x, y].map((mm) => String(mm).replace('-', '−')).join(', ')
        return new RegExp(`^hole 3.4 mm at ${at}, ${z} mm, to ${way}$`)
      })
    const joinByHand = async (
      on: string,
      piece: string,
      pairs: readonly (readonly [RegExp, RegExp])[],
    ) => {
      await hand.getByRole('list', { name: `On ${piece}` }).waitFor()
      if ((await hand.getByRole('list', { name: `On ${on}` }).count()) === 0) {
        await hand.getByRole('button', { name: /On$/ }).click()
        await page.getByRole('option', { name: on, exact: true }).click()
      }
      for (const [i, [one, other]] of pairs.entries()) {
        if (i > 0) await hand.getByRole('button', { name: 'One more pair' }).click()
        await hole(on, one).click()
        await hole(piece, other).click()
      }
    }
    const pairsOf = (one: readonly RegExp[], other: readonly RegExp[]) =>
      one.map((each, i) => [each, other[i]!] as const)
    const join = hand.getByRole('button', { name: 'Join by hand' })

    await joinByHand('lower', 'front', [[spokes(0, 3, 'up')[0]!, arm(0, 'down')[0]!]])
    const turn = hand.getByLabel('Turn')
    await turn.focus()
    await page.keyboard.press('ArrowUp')
    await expect.poll(() => turn.inputValue()).toBe('15')
    await join.click()
    await jointsIn(sheet).first().click()
    const fields = sheet.getByRole('group', { name: /^Joint of front on lower/ })
    await expect.poll(() => fields.getByLabel('Turn').inputValue()).toBe('15')
    // The stack of its screw, as a picture and in words: 3 mm of deck, 6 of arm, a locknut of 4
    // (ISO 7040).
    await sheet
      .getByText(
        'From under the head: 3 mm of lower, 6 mm of front, a nut of 4 mm. Screw: M3 × 16.',
      )
      .waitFor()
    await fields.getByLabel('Gap between the faces').fill('2,5')
    await page.keyboard.press('Enter')
    await fields.getByRole('button', { name: 'Turn over' }).click()
    await expect.poll(() => page.getByRole('button', { name: /^Undo: turn over/ }).count()).toBe(1)
    await fields.getByRole('button', { name: 'Take out' }).click()
    await sheet.getByText('Nothing is joined yet.').waitFor()

    // Two arms in each other: told with the volume, and marked where they are.
    await joinByHand('lower', 'front', [[spokes(0, 3, 'up')[0]!, arm(0, 'down')[0]!]])
    await join.click()
    await joinByHand('lower', 'left', [[spokes(0, 3, 'up')[1]!, arm(0, 'down')[0]!]])
    await join.click()
    const told = sheet.getByRole('list', { name: 'What runs into what' }).getByRole('listitem')
    await told.getByText(/“front” and “left” run into each other/).waitFor()
    const volume = /by ([\d.]+ [cm]m³)/.exec((await told.textContent()) ?? '')?.[1]
    await sheet.locator('.frame-sign text').getByText(volume!, { exact: true }).waitFor()
    await sheet.getByRole('button', { name: /run into each other by/ }).focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => told.evaluate((row) => row === document.activeElement)).toBe(true)
    for (const _ of ['left', 'front']) await page.keyboard.press('Control+z')
    await sheet.getByText('Nothing is joined yet.').waitFor()
    await told.waitFor({ state: 'detached' })
    await expect.poll(() => sheet.locator('.frame-sign').count()).toBe(0)

    for (const [place, name] of ['front', 'left', 'right', 'rear'].entries()) {
      await joinByHand('lower', name, pairsOf(spokes(place, 3, 'up'), arm(0, 'down')))
      await join.click()
    }
    await joinByHand('front', 'upper', pairsOf(arm(6, 'up'), spokes(0, 0, 'down')))
    await join.click()
    await joinByHand('upper', 'tray', pairsOf(odd(3, 'up'), odd(0, 'down')))
    await join.click()
    // The mast slides into the tray's blind bore.
    await joinByHand('tray', 'mast', [[/^hole 12.2 mm at 4, 2, 14 mm, to up$/, /^shaft 12 mm/]])
    await join.click()
    await sheet.getByText('Every piece stands').waitFor()
    await expect.poll(() => jointsIn(sheet).count()).toBe(7)
    await expect.poll(() => sheet.locator('.joint-strained').count()).toBe(0)
  })
})

test('two that almost fit: which holes come nearest is told, by how much, and nothing is joined', async () => {
  await withApp(async ({ page }) => {
    const square = (sideMm: number): readonly Point[] =>
      [-1, 1].flatMap((x) => [-1, 1].map((y): Point => [(x * sideMm) / 2, (y * sideMm) / 2]))
    await dropFiles(page, [
      stl('base.stl', rectangleAbout(60, 52), 3, drilled(square(30.5), 3)),
      stl('lid.stl', rectangleAbout(44, 40), 4, drilled(square(30.1), 4)),
    ])
    const sheet = await beginAssembling(page)
    await sheet.getByText('lid: no two holes and no equal face meet; join it by hand').waitFor()
    const near = sheet.getByText(/^Nearest: /)
    await expect
      .poll(() => near.textContent())
      .toMatch(
        /^Nearest: 4 holes of 3\.\d mm, 30\.10? mm apart here and 30\.50? mm on base: 0\.40? mm off\.$/,
      )
    await expect.poll(() => jointsIn(sheet).count()).toBe(0)
    // Made to meet, it is offered and says so no more.
    await dropFiles(page, [stl('cover.stl', rectangleAbout(44, 40), 4, drilled(square(30.5), 4))])
    await looseIn(sheet).filter({ hasText: 'cover' }).click()
    await sheet
      .getByRole('radiogroup', { name: 'Ways to join it' })
      .getByRole('radio')
      .first()
      .waitFor()
    await expect.poll(() => near.count()).toBe(0)
  })
})
