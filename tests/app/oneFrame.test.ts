import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { Locator, Page } from 'playwright'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { FrameReport } from '../../src/cli/frameReport.ts'
import { isFailed } from '../../src/cli/report.ts'
import { piecesWords } from '../../src/core/frame/sayings.ts'
import { withApp } from '../support/app.ts'
import { readFrameOnPaper, type FrameOnPaper } from '../support/frameOnPaper.ts'
import {
  chooseFromMenu,
  dropFiles,
  openPrinter,
  openRow,
  openSection,
  waitForCensus,
} from '../support/page.ts'
import { meshOf } from '../support/meshes.ts'
import { runPriceHere } from '../support/priceCommand.ts'
import { expectClock, expectGrams, expectShown } from '../support/shownFigure.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1440, height: 900 }, hasCounted: true }

/** A triangle: it is read, and encloses nothing. */
const FLAT = meshOf(
  [
    [0, 0, 0],
    [10, 0, 0],
    [0, 10, 0],
  ],
  [0, 1, 2],
)

/** One fact of the sample after another, as a hand would change it. */
const FACTS: readonly (readonly [name: string, change: (page: Page) => Promise<void>])[] = [
  ['as it comes', async () => undefined],
  ['infill', async (page) => typeIn(await openRow(page, 'Lower deck'), 'Infill share', '55')],
  ['pieces', async (page) => typeIn(await openRow(page, 'Lower deck'), 'On the frame', '2')],
  ['spares', async (page) => typeIn(await openRow(page, 'Tail boom'), 'Spares', '3')],
  ['unit', async (page) => choose(await openRow(page, 'Pivot collar'), 'Drawn in', /^Inches/)],
  [
    'weigh-in',
    async (page) => typeIn(await openSection(page, 'Weigh-in'), 'Tail boom on the scale', '33.3'),
  ],
  [
    'bought item',
    async (page) => {
      const items = await openSection(page, 'Bolts and bought items')
      await items.getByRole('button', { name: 'Motor', exact: true }).click()
      await typeIn(items.getByRole('group', { name: 'Item Motor' }), 'Mass of one', '31.5')
    },
  ],
  [
    'failed part',
    async (page) => {
      await dropFiles(page, [{ name: 'flat.stl', bytes: writeStlBinary(FLAT) }])
      await page.locator('.status-wrong').waitFor()
    },
  ],
  [
    'weigh-in of the failed part',
    async (page) => typeIn(await openSection(page, 'Weigh-in'), 'flat on the scale', '3.2'),
  ],
  ['material', async (page) => choose(await openRow(page, 'GPS mast'), 'Material', /^PETG \d/)],
  [
    'printer',
    async (page) => {
      await openPrinter(page)
      const dialog = page.getByRole('dialog', { name: 'Printer' })
      await choose(dialog, 'Class', /^Fast/)
      await page.keyboard.press('Escape')
    },
  ],
]

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'preweigh-one-frame-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

test('with one fact changed after another every place of page, paper, table and command says one frame', async () => {
  await withApp(async ({ page }) => {
    await page.getByRole('button', { name: /Load Sandpiper/ }).click()
    await waitForCensus(page)
    let before = ''
    for (const [fact, change] of FACTS) {
      await change(page)
      await waitForCensus(page)
      const shown = await readFrameOnPaper(page)
      const table = readFileSync(
        await downloaded(page, () => chooseFromMenu(page, 'Save as CSV')),
        'utf8',
      )
      const save = () => page.getByRole('button', { name: 'Save file' }).click()
      const report = await priceFrame(await downloaded(page, save))
      const sums = JSON.stringify([report.total, report.totalWithSpares, report.ledger])
      if (fact !== 'failed part') expect.soft(sums, `${fact} changes the frame`).not.toBe(before)
      before = sums
      expectHead(shown, report, fact)
      expectList(shown, report, fact)
      expectSheets(shown, report, fact)
      expectTable(table, report, fact)
      expectLeftOut(shown, report, fact)
    }
  }, LOCALE)
}, 1_200_000)

async function typeIn(place: Locator, label: string, value: string): Promise<void> {
  const field = place.getByRole('textbox', { name: new RegExp(`^${label}`) })
  await field.fill(value)
  await field.press('Tab')
}

async function choose(place: Locator, label: string, option: RegExp): Promise<void> {
  await place.getByRole('button', { name: new RegExp(label) }).click()
  await place.page().getByRole('option', { name: option }).click()
}

/** The path of the file that the page hands out. */
async function downloaded(page: Page, ask: () => Promise<void>): Promise<string> {
  const [file] = await Promise.all([page.waitForEvent('download'), ask()])
  const saved = path.join(folder, file.suggestedFilename())
  await file.saveAs(saved)
  return saved
}

async function priceFrame(file: string): Promise<FrameReport> {
  const { out } = await runPriceHere('.', ['--frame', file, '--json'])
  return JSON.parse(out) as FrameReport
}

function expectHead(
  { head, links, spoken, needleG, sides }: FrameOnPaper,
  report: FrameReport,
  fact: string,
): void {
  const { total, totalWithSpares, ledger } = report
  const [mid = '', range = ''] = (head['grams'] ?? '').split(' g ')
  expectGrams(mid, total.massG.mid, fact)
  expectSpan(range, total.massG, 1, fact)
  expectGrams(spoken, total.massG.mid, `spoken, ${fact}`)
  // A tick of the ruler stands for a gram or more; the needle is drawn to the hundredth of a pixel.
  expect.soft(Math.abs(needleG - total.massG.mid), `needle, ${fact}`).toBeLessThan(0.05)
  expectGrams(head['all-up'] ?? '', ledger.basicMassG, `head, ${fact}`)
  expectGrams(links['#/aircraft'] ?? '', ledger.basicMassG, `link, ${fact}`)
  expectShown(head['cost'] ?? '', totalWithSpares.cost.mid, fact)
  expectClock(head['time'] ?? '', totalWithSpares.timeS.mid, fact)
  const { carbon } = report
  if (carbon === null) throw new Error('The sample is compared with carbon.')
  expectGrams(head['carbon'] ?? '', carbon.massG.mid, `head, ${fact}`)
  expectGrams(links['#/carbon'] ?? '', carbon.massG.mid, `link, ${fact}`)
  expectGrams(sides['Frame'] ?? '', total.massG.mid, `sides, ${fact}`)
  expectGrams(sides['All-up'] ?? '', ledger.basicMassG, `sides, ${fact}`)
  expectShown(sides['Cost of what flies'] ?? '', total.cost.mid, `sides, ${fact}`)
}

function expectSpan(words: string, { low, high }: Span, times: number, of: string): void {
  const [from = '', to = from] = words.split('–')
  expectGrams(from, times * low, of)
  expectGrams(to, times * high, of)
}

interface Span {
  readonly low: number
  readonly mid: number
  readonly high: number
}

function expectList(shown: FrameOnPaper, report: FrameReport, fact: string): void {
  const { total, totalWithSpares } = report
  const { rows, foot, numbers, parts: pages } = shown
  expect.soft(rows).toHaveLength(report.parts.length)
  const masses = report.parts.map(({ quantity, massG }) => quantity * (massG?.mid ?? 0))
  for (const [i, part] of report.parts.entries()) {
    const row = rows[i]!
    const of = `${part.name}, ${fact}`
    expect.soft(row.name).toBe(part.name)
    expect.soft(Number.parseInt(row.quantity), of).toBe(part.quantity)
    const massG = masses[i]!
    if (isFailed(part)) {
      expect.soft([row.cost, row.hours], of).toEqual(['', ''])
      if (part.massG === undefined) expect.soft(row.grams, of).toBe('')
      else expectGrams(row.grams, massG, of)
      continue
    }
    const printed = part.quantity + part.spares
    expectGrams(row.grams, massG, of)
    if (/\d/.test(row.gramsRange)) expectSpan(row.gramsRange, part.massG, part.quantity, of)
    expectShown(row.cost, printed * part.cost.mid, of)
    expectClock(row.hours, printed * part.timeS.mid, of)
    expect.soft(row.share, of).toBeCloseTo(massG / Math.max(...masses), 4)
    const page = pages[i]!
    const [, grams = ''] = /· (\S+) g\b/.exec(page.title) ?? []
    expectGrams(grams, massG, `title block, ${of}`)
    expectClock(page.title, printed * part.timeS.mid, of)
    expectGrams(page.facts['Mass of one'] ?? '', part.massG.mid, of)
    expectShown(page.facts['Cost of all'] ?? '', printed * part.cost.mid, of)
    const laidG = page.laid.reduce((all, words) => all + (Number.parseFloat(words) || 0), 0)
    expect.soft(Math.abs(laidG - part.massG.mid), `laid, ${of}`).toBeLessThan(0.3)
    expectClock(page.facts['Hours of all'] ?? '', printed * part.timeS.mid, of)
    const number = numbers.find((words) => words.startsWith(`${i + 1} ${part.name}`))
    // Parts hidden behind others have no number in this view.
    if (number !== undefined && !number.includes(', :')) {
      expectGrams(number.slice(`${i + 1} ${part.name}`.length), massG, `drawing, ${of}`)
    }
  }
  expectGrams(foot.grams, total.massG.mid, `foot, ${fact}`)
  expectSpan(foot.gramsRange, total.massG, 1, `foot, ${fact}`)
  expectShown(foot.cost, totalWithSpares.cost.mid, `foot, ${fact}`)
  expectClock(foot.hours, totalWithSpares.timeS.mid, `foot, ${fact}`)
  // What is written down the column adds up to what is written below it, as far as tenths can.
  const column = rows.reduce((sum, { grams }) => sum + (Number.parseFloat(grams) || 0), 0)
  const foots = Number.parseFloat(foot.grams)
  expect.soft(Math.abs(column - foots), fact).toBeLessThanOrEqual(0.05 * (rows.length + 1))
}

function expectSheets(shown: FrameOnPaper, report: FrameReport, fact: string): void {
  const { carbonMass, carbonCost, standing, facts, groups, massLines, bench, spares } = shown
  const { total, ledger, balance, flight, carbon } = report
  const [, carbonPrinted = ''] = carbonMass.split('printed')
  expectGrams(carbonMass.replace('Mass', ''), Math.abs(carbon!.massG.mid), `carbon, ${fact}`)
  expectGrams(carbonPrinted, total.massG.mid, `carbon, ${fact}`)
  expectShown(carbonCost, Math.abs(carbon!.cost.mid), `carbon, ${fact}`)
  expectShown(carbonCost.split('printed')[1] ?? '', total.cost.mid, `carbon, ${fact}`)

  expect.soft(standing.replaceAll('−', '-'), fact).toBe(report.standing)
  expectGrams(factOf(facts, 'Basic mass'), ledger.basicMassG, fact)
  expectGrams(factOf(facts, 'Growth'), ledger.growthG, fact)
  expectGrams(factOf(facts, 'Predicted mass'), ledger.predictedMassG, fact)
  expectGrams(groups['Printed parts'] ?? '', total.massG.mid, `group, ${fact}`)
  for (const { name, thresholdG } of report.odds.slice(1)) {
    const words = Object.entries(massLines).find(([line]) => line.startsWith(name))?.[1]
    const leftG = Math.abs(thresholdG - ledger.basicMassG)
    expectShown(words ?? '', words?.includes('kg') === true ? leftG / 1000 : leftG, name)
  }
  if (balance === null || flight === null) throw new Error('The sample is placed and flies.')
  expectShown(factOf(facts, 'Mass that has a place'), balance.massG, fact)
  expectGrams(factOf(facts, 'All-up weight'), flight.auwG, fact)
  expect.soft(flight.auwG).toBeCloseTo(ledger.basicMassG, 9)
  expectShown(factOf(facts, 'Hover power'), flight.hoverW.mid, fact)
  expectShown(factOf(facts, 'One gram more'), flight.sPerGram, fact)

  for (const part of report.parts) {
    if (isFailed(part)) continue
    const line = bench.find((words) => words.startsWith(part.name))
    expectGrams(
      line?.replace(part.name, '') ?? '',
      part.calculatedG,
      `bench, ${part.name}, ${fact}`,
    )
    const spare = spares.find((words) => words.startsWith(part.name))
    expect.soft(spare).toContain(piecesWords(part.quantity, part.spares))
    if (part.spares > 0) {
      expectGrams(spare?.split('·')[1] ?? '', part.spares * part.massG.mid, `spares, ${fact}`)
    }
  }
}

function factOf(facts: FrameOnPaper['facts'], words: string): string {
  return Object.entries(facts).find(([name]) => name.includes(words))?.[1] ?? ''
}

function expectTable(table: string, report: FrameReport, fact: string): void {
  const { total, totalWithSpares, parts } = report
  const lines = table.trimEnd().split('\r\n').slice(1).map(cellsOf)
  const sums = lines[parts.length]!
  const bought = report.ledger.lines.filter(({ group }) => group !== 'printed')
  // What is bought follows the frame's line, and then the aircraft.
  expect.soft(lines).toHaveLength(parts.length + bought.length + 2)
  expect.soft(Number(lines.at(-1)![7]), fact).toBeCloseTo(report.ledger.basicMassG, 2)
  expectCells(sums, total.massG, totalWithSpares.cost.mid, totalWithSpares.timeS.mid, fact)
  for (const [i, part] of parts.entries()) {
    const cells = lines[i]!
    expect.soft(cells.slice(2, 4), part.name).toEqual([String(part.quantity), String(part.spares)])
    const { quantity, massG } = part
    const flying = massG && {
      low: quantity * massG.low,
      mid: quantity * massG.mid,
      high: quantity * massG.high,
    }
    const of = `${part.name}, ${fact}`
    if (isFailed(part)) {
      expect.soft(cells.slice(10, 16).join(''), of).toBe('')
      if (flying === undefined) expect.soft(cells[7], of).toBe('')
      else expect.soft(Number(cells[7]), of).toBeCloseTo(flying.mid, 2)
      continue
    }
    const printed = quantity + part.spares
    if (flying !== undefined) {
      expectCells(cells, flying, printed * part.cost.mid, printed * part.timeS.mid, of)
    }
  }
}

/** Cells of one line of the table, quotes off. */
function cellsOf(line: string): readonly string[] {
  return [...line.matchAll(/"((?:[^"]|"")*)"|([^,]+)|(?<=,)(?=,|$)/g)].map(
    ([, quoted, plain]) => quoted ?? plain ?? '',
  )
}

function expectCells(
  cells: readonly string[],
  massG: Span,
  cost: number,
  timeS: number,
  of: string,
): void {
  const [mass, low, high, money, , , hours] = cells.slice(7).map(Number)
  expect.soft(mass, of).toBeCloseTo(massG.mid, 2)
  expect.soft(low, of).toBeCloseTo(massG.low, 2)
  expect.soft(high, of).toBeCloseTo(massG.high, 2)
  expect.soft(money, of).toBeCloseTo(cost, 3)
  expect.soft(hours, of).toBeCloseTo(timeS / 3600, 3)
}

/**
 * Whoever says a total says what it leaves out; the scale's grams of a failed part are in every
 * mass.
 */
function expectLeftOut(
  { head, foot, cautions }: FrameOnPaper,
  report: FrameReport,
  fact: string,
): void {
  const [left] = report.leftOut
  expect.soft(left !== undefined, fact).toBe(report.parts.some(isFailed))
  const ofMass = left !== undefined && !left.weighed
  const without = (words = '') => words.includes('without 1 part')
  expect.soft(without(head['grams']), `grams, ${fact}`).toBe(ofMass)
  expect.soft(without(head['carbon']), `carbon, ${fact}`).toBe(ofMass)
  expect.soft(without(head['time']), `hours, ${fact}`).toBe(left?.weighed === true)
  expect.soft(without(foot.below), `foot, ${fact}`).toBe(left !== undefined)
  const saying = (words: string) => cautions.filter((each) => each.includes(words)).length
  // The sheets Carbon, whose cost is without it in any case, and Aircraft.
  const told = left === undefined ? 0 : ofMass ? 2 : 1
  expect.soft(saying('without 1 part: “flat”'), fact).toBe(told)
  expect.soft(saying('left out of every sum: “flat”'), fact).toBe(ofMass ? 1 : 0)
  expect.soft(saying('but weighed: “flat”'), fact).toBe(left?.weighed === true ? 1 : 0)
}
