import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { Locator, Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { FrameReport } from '../../src/cli/frameReport.ts'
import { isFailed } from '../../src/cli/report.ts'
import { withApp } from '../support/app.ts'
import { prism } from '../support/meshes.ts'
import {
  dropFiles,
  loadSandpiper,
  goToSheet,
  gramsOf,
  openRow,
  openSection,
  rowOf,
  waitForCensus,
} from '../support/page.ts'
import { runPriceHere } from '../support/priceCommand.ts'
import { expectShown } from '../support/shownFigure.ts'
import { meshXml, modelXml, pack3mf } from '../support/writeMesh.ts'

const WIDE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }
const COUNTED = { ...WIDE, hasCounted: true }

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'preweigh-figures-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

/** What the command line says of a demo or of a saved frame, in the page's locale. */
async function priceFrame(frame: string): Promise<FrameReport> {
  const { code, out, err } = await runPriceHere('.', ['--frame', frame, '--json'])
  expect([code, err]).toEqual([0, ''])
  return JSON.parse(out) as FrameReport
}

async function expectFact(section: Locator, words: string | RegExp, value: number): Promise<void> {
  const fact = section
    .locator('dl > div')
    .filter({ has: section.page().locator('dt', { hasText: words }) })
  expectShown(await fact.locator('dd').innerText(), value)
}

/** Holds every figure of the report that the page shows against what it shows. */
async function expectPage(page: Page, report: FrameReport): Promise<void> {
  const { ledger, twin, balance, flight } = report
  const list = await goToSheet(page, 'frame')
  const printed = await list.locator('tr.row').evaluateAll((lines) =>
    lines.map((line) => {
      const wordsIn = (place: string) => line.querySelector<HTMLElement>(place)?.innerText.trim()
      return [wordsIn('.row-name'), wordsIn('.cell-grams .figure') ?? ''] as const
    }),
  )
  const gramsIn = new Map(printed)
  for (const part of report.parts) {
    if (isFailed(part)) throw new Error(part.error.message)
    const text = gramsIn.get(part.name) ?? ''
    if (!text.includes('<')) expectShown(text, part.quantity * part.massG.mid)
  }

  const items = await openSection(page, 'Bolts and bought items')
  const rows = await items.locator('tr.item').evaluateAll((lines) =>
    lines.map((line) => {
      const words = [...line.querySelectorAll<HTMLElement>('th, td')].map((cell) => cell.innerText)
      return [words[0]?.trim() ?? '', words.slice(1)] as const
    }),
  )
  const cellsOf = new Map(rows)
  for (const line of ledger.lines.filter(({ group }) => group !== 'printed')) {
    const cells = cellsOf.get(line.name) ?? []
    expect(cells[0], line.name).toBe(String(line.quantity))
    expectShown(cells[1] ?? '', line.massG)
    expectShown(cells[2] ?? '', line.quantity * line.massG)
    expectShown(cells[3] ?? '', line.costEach ?? Number.NaN)
    expect(cells[4]).toBe(line.status)
  }

  const mass = await openSection(page, 'Mass')
  await expectFact(mass, 'Basic mass', ledger.basicMassG)
  await expectFact(mass, 'Growth', ledger.growthG)
  await expectFact(mass, 'Predicted mass', ledger.predictedMassG)
  if (ledger.limitG !== null && ledger.marginG !== null) {
    await expectFact(mass, /^Limit/, ledger.limitG)
    const sentence = await mass.locator('.mass-standing').innerText()
    expect(sentence.replaceAll('−', '-')).toBe(report.standing)
  }

  // Of a plane carbon is shown only when asked for.
  const carbon = await goToSheet(page, 'carbon')
  await carbon.locator('.carbon-offer, .craft').first().waitFor()
  const offer = carbon.getByRole('button', { name: 'Show its flat parts cut from plate' })
  if (await offer.isVisible()) await offer.click()
  const cut = await openSection(page, 'Carbon twin')
  for (const one of twin) {
    const field = cut.getByRole('textbox', { name: `Thickness of ${one.part}` })
    await field.waitFor()
    expect(Number(await field.inputValue())).toBeCloseTo(one.plateMm, 6)
    const row = cut.locator('tr', {
      has: page.getByRole('textbox', { name: `Thickness of ${one.part}` }),
    })
    expectShown(await row.locator('td').nth(0).innerText(), one.massG)
    expectShown(await row.locator('td').nth(1).innerText(), one.cost)
  }

  for (const { part, freeMm, printedHz, plateHz } of report.arms) {
    const name = `Free length of ${part}`
    const row = cut.locator('tr', { has: page.getByRole('textbox', { name }) })
    // Arms are solved in the background.
    await row.getByText('solved; type one for a beam').waitFor({ timeout: 120_000 })
    expectShown(await row.locator('td').nth(0).innerText(), printedHz.mid)
    expectShown(await row.locator('td').nth(1).innerText(), plateHz.mid)
    expectShown(await row.getByRole('textbox').inputValue(), freeMm)
  }

  const balanced = await openSection(page, 'Balance')
  if (balance !== null) {
    const fact = (words: string) => balanced.locator('dl > div', { hasText: words }).locator('dd')
    const [x, y, z] = balance.cgMm
    for (const [words, mm, less] of [
      ['Centre of gravity', x, 'aft'],
      ['Sideways', y, 'right'],
      ['In height', z, 'down'],
    ] as const) {
      const text = await fact(words).innerText()
      expectShown(text, Math.abs(mm))
      if (Math.abs(mm) > 0.1) expect(text.includes(less), text).toBe(mm < 0)
    }
    await expectFact(balanced, 'inertia, roll', balance.inertiaKgM2[0] * 1000)
    await expectFact(balanced, 'inertia, pitch', balance.inertiaKgM2[1] * 1000)
    await expectFact(balanced, 'inertia, yaw', balance.inertiaKgM2[2] * 1000)
    await expectFact(balanced, 'Mass that has a place', balance.massG)
  }

  const flies = await openSection(page, 'Flight')
  if (flight === null) {
    expect(await flies.getByText('min of hover').count()).toBe(0)
    return
  }
  expectShown(await flies.locator('.craft-lead').innerText(), flight.hoverMin.mid)
  const [low, high] = (await flies.locator('.craft-lead .range').innerText()).split('–')
  expectShown(low ?? '', flight.hoverMin.low)
  expectShown(high ?? '', flight.hoverMin.high)
  expectShown(await flies.getByText('Thrust-to-weight').innerText(), flight.thrustToWeight)
  await expectFact(flies, 'All-up weight', flight.auwG)
  await expectFact(flies, 'Hover power', flight.hoverW.mid)
  await expectFact(flies, 'with its square', 100 * flight.hoverThrottle)
  await expectFact(flies, 'straight with it', 100 * flight.hoverThrottleLinear)
  await expectFact(flies, /Payload left|Too heavy/, Math.abs(flight.payloadG))
  await expectFact(flies, 'One gram more', flight.sPerGram)
}

describe('page and command line', { timeout: 800_000 }, () => {
  test.each(['sandpiper', 'tern'] as const)('show the same figures for %s', async (id) => {
    const report = await priceFrame(id)
    await withApp(async ({ page }) => {
      const name = id === 'tern' ? /Tern, a glider/ : /Load Sandpiper/
      await page.getByRole('button', { name }).click()
      await waitForCensus(page)
      await expectPage(page, report)
    }, COUNTED)
  })

  test('show the same figures for a frame changed on the page and saved', async () => {
    await withApp(async ({ page }) => {
      await loadSandpiper(page)
      const mass = await openSection(page, 'Mass')
      for (const [label, value] of [
        ['All-up at most', '700'],
        ['On what is estimated', '3'],
      ] as const) {
        const field = mass.getByRole('textbox', { name: label })
        await field.fill(value)
        await field.press('Tab')
      }
      const bench = await openSection(page, 'Weigh-in')
      const boom = bench.getByRole('textbox', { name: 'Tail boom on the scale' })
      await boom.fill('33.3')
      await boom.press('Tab')
      const flies = await openSection(page, 'Flight')
      const cells = flies.getByRole('textbox', { name: 'Cells in series' })
      await cells.fill('4')
      await cells.press('Tab')

      const [file] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'Save file' }).click(),
      ])
      const saved = path.join(folder, 'changed.preweigh')
      await file.saveAs(saved)
      const report = await priceFrame(saved)
      expect(report.ledger.limitG).toBe(700)
      expect(report.ledger.lines.find(({ name }) => name === 'Tail boom')).toMatchObject({
        massG: 33.3,
        status: 'weighed',
      })
      await expectPage(page, report)
    }, COUNTED)
  })
})

describe('a 3MF drawn assembled', { timeout: 300_000 }, () => {
  /** Four arms of one object round the middle, and a deck, each where its transform puts it. */
  const arm = prism(
    [
      [20, -6],
      [120, -5],
      [120, 5],
      [20, 6],
    ],
    8,
  )
  const deck = prism(
    [
      [-25, -30],
      [35, -30],
      [35, 30],
      [-25, 30],
    ],
    3,
  )
  const turns = ['1 0 0 0 1 0', '0 1 0 -1 0 0', '-1 0 0 0 -1 0', '0 -1 0 1 0 0']
  const bytes = pack3mf(
    modelXml(
      `<object id="1" name="arm" type="model">${meshXml(arm)}</object>` +
        `<object id="2" name="deck" type="model">${meshXml(deck)}</object>`,
      `${turns.map((turn) => `<item objectid="1" transform="${turn} 0 0 1 0 0 10"/>`).join('')}<item objectid="2"/>`,
    ),
  )

  test('becomes rows by its build items, whose places the balance takes over in one click', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [{ name: 'frame.3mf', bytes }])
      await waitForCensus(page)
      const panel = await openRow(page, 'frame')
      await panel.getByRole('button', { name: 'Make rows of them' }).click()
      await goToSheet(page, 'frame')
      await rowOf(page, 'arm').waitFor()
      await waitForCensus(page)
      const arms = await gramsOf(page, 'arm')
      const decks = await gramsOf(page, 'deck')

      const balance = await openSection(page, 'Balance')
      const fact = (words: string) => balance.locator('dl > div', { hasText: words }).locator('dd')
      expect(await fact('Centre of gravity').count()).toBe(0)
      await balance.getByRole('button', { name: 'Place 5 pieces as in the 3MF' }).click()
      await expect.poll(() => balance.locator('.places li').count()).toBe(5)
      await fact('Centre of gravity').waitFor()
      // The arms balance one another; the deck's middle is 5 mm forward.
      expectShown(await fact('Centre of gravity').innerText(), (5 * decks) / (arms + decks))
      expectShown(await fact('Sideways').innerText(), 0)
      expectShown(await fact('In height').innerText(), (14 * arms + 1.5 * decks) / (arms + decks))
      await page.getByRole('button', { name: /^Undo: place parts as in the 3MF/ }).click()
      await expect.poll(() => balance.locator('.places li').count()).toBe(0)
    }, WIDE)
  })
})
