import {
  formatAll,
  formatHours,
  formatMass,
  formatMoney,
  formatNumber,
  formatRange,
  formatWithUnit,
  withSign,
} from '../core/words/format.ts'
import { screwWords } from '../core/aircraft/hardware/screwWords.ts'
import { DRILL_CAUTION } from '../core/data/drills.ts'
import { MATERIALS } from '../core/data/materials.ts'
import type { Range } from '../core/model/figures.ts'
import { KEPT_BACK_G } from '../core/runs/assignSpools.ts'
import { dryingWords } from '../core/runs/sayings.ts'
import { fateWords, learnedHoursWords, learnedWords } from '../core/words/learned.ts'
import { toldWords } from '../core/words/toldWords.ts'
import {
  chanceWords,
  coarseWords,
  leftOutOfAll,
  piecesWords,
  VERDICT_WORDS,
} from '../core/frame/sayings.ts'
import type { FramePart, FrameReport } from './frameReport.ts'
import { isFailed } from './report.ts'
import { align, cellsOf, HEAD, partNotes } from './table.ts'

/**
 * The frame as aligned text: parts, ledger, twin, balance, flight, then failures and notes. Ends
 * with a line feed.
 */
export function frameTableOf(report: FrameReport, locale?: string): string {
  const blocks = [
    partLines(report, locale),
    costDoubtLines(report, locale),
    [...runLines(report, locale), ...shelfLines(report, locale)],
    screwLines(report),
    drillLines(report, locale),
    assemblyLines(report),
    fitLines(report, locale),
    learnedLines(report, locale),
    ledgerLines(report, locale),
    oddsLines(report, locale),
    twinLines(report, locale),
    armLines(report, locale),
    balanceLines(report, locale),
    flightLines(report, locale),
    cruiseLines(report, locale),
    noteLines(report),
  ]
  const text = blocks.filter((block) => block.length > 0).map((block) => block.join('\n'))
  return `${text.join('\n\n').replaceAll('\u00a0', ' ')}\n`
}

function partLines(report: FrameReport, locale?: string): string[] {
  const { parts, total, totalWithSpares, leftOut } = report
  const rows = parts.flatMap((part) =>
    isFailed(part)
      ? weighedRow(part, locale)
      : [[`${part.quantity} × ${part.name}`, ...cellsOf(part, locale)]],
  )
  if (rows.length === 0) return []
  const flying = parts.reduce((all, { quantity }) => all + quantity, 0)
  const spares = parts.reduce((all, part) => all + part.spares, 0)
  const words = leftOutOfAll(leftOut)
  const left = [
    ...(total.coarse === 0 ? [] : [coarseWords(total.coarse)]),
    ...(words === null ? [] : [words]),
  ]
  const sums = [[['total', piecesWords(flying, 0), ...left].join(', '), ...cellsOf(total, locale)]]
  if (spares > 0) sums.push([piecesWords(flying, spares), ...cellsOf(totalWithSpares, locale)])
  return ['Parts, figures of one piece', ...align([HEAD, ...rows, ...sums])]
}

function shelfLines({ runs, shelf }: FrameReport, locale?: string): string[] {
  const wet = [...new Set(runs.filter(({ dryFirst }) => dryFirst).map(({ material }) => material))]
  const drying = wet.map((name) => dryingWords(name))
  if (shelf === null) return drying
  const left = shelf.spools.map(
    ({ spool, material, leftG }) => `${spool} (${material}) ${formatMass(leftG, locale)}`,
  )
  const buy = shelf.toBuy.map(
    ({ material, neededG }) => `${formatMass(neededG, locale)} of ${material}`,
  )
  return [
    `Left on the spools after all runs, ${KEPT_BACK_G} g kept back on each: ${left.join(', ') || 'none named'}`,
    ...(buy.length === 0 ? [] : [`To buy, for runs that no spool finishes: ${buy.join(', ')}`]),
    ...drying,
  ]
}

function runLines({ runs, finish }: FrameReport, locale?: string): string[] {
  if (runs.length === 0) return []
  const hours = (value: number): string => formatHours(3600 * value, locale)
  const onSeveral = new Set(runs.map(({ printer }) => printer)).size > 1
  const rows = runs.map(({ printer, material, pieces, hours: own, massG, bedShare }, i) => [
    `${i + 1}`,
    ...(onSeveral ? [printer] : []),
    material,
    hours(own.mid),
    formatRange(own, hours),
    formatMass(massG, locale),
    `${formatNumber(100 * bedShare, locale, 0)} %`,
    pieces.map(({ part, count }) => (count === 1 ? part : `${count} × ${part}`)).join(', '),
  ])
  const { inTurnHours, sideBySideHours } = finish
  const soon = onSeveral ? `, side by side done in ${hours(sideBySideHours)}` : ''
  const prints = `${runs.length} ${runs.length === 1 ? 'print' : 'prints'}`
  const title = `Print runs: ${hours(inTurnHours)} in ${prints}, spares too${soon}`
  return [
    `${title}; in the hours and the money above each piece has its share of its run`,
    ...align([
      [
        'run',
        ...(onSeveral ? ['printer'] : []),
        'plastic',
        'hours',
        'likely',
        'mass',
        'bed',
        'pieces',
      ],
      ...rows,
    ]),
  ]
}

/** As many of each as end in a joint; those of no stocked length last. */
function screwLines({ joints, jointFindings, clashes }: FrameReport): string[] {
  const words = screwWords(joints)
  return [
    ...(words === null ? [] : [`Screws from joints: ${words}`]),
    ...jointFindings.map(({ message }) => message),
    ...clashes.map(({ message }) => message),
  ]
}

/** By the drill to fetch, alike holes of a part in one line. */
function drillLines({ drill }: FrameReport, locale?: string): string[] {
  const alike = new Map<string, { hole: FrameReport['drill'][number]; count: number }>()
  for (const hole of drill) {
    const { part, use, drillMm, diameterMm, hole: number } = hole
    if (drillMm === null) continue
    const key = JSON.stringify([part, use, drillMm, diameterMm.toFixed(1), groupOf(number)])
    const before = alike.get(key)
    alike.set(key, { hole, count: (before?.count ?? 0) + 1 })
  }
  if (alike.size === 0) return []
  const size = (mm: number): string => formatWithUnit(mm, 'mm', locale)
  const rows = [...alike.values()]
    .toSorted((a, b) => (a.hole.drillMm ?? 0) - (b.hole.drillMm ?? 0))
    .map(({ hole: { part, hole, use, drillMm, diameterMm }, count }) => [
      size(drillMm ?? 0),
      `${count} × ${part}`,
      groupOf(hole),
      size(diameterMm),
      use,
    ])
  return [
    'Holes to drill, of one piece each; --json says of every hole what is to be minded',
    ...align([['drill', 'holes', 'no.', 'drawn', 'for'], ...rows]),
    DRILL_CAUTION,
  ]
}

/** What does not fit, is short or was not told; what fits needs no line. */
function fitLines({ fits }: FrameReport, locale?: string): string[] {
  const odd = fits.filter(({ verdict }) => verdict !== 'fits')
  if (odd.length === 0) return []
  const lines = odd.map(
    ({ what, verdict, words }) => `${what}: ${verdict}. ${toldWords(words, locale)}`,
  )
  return ['Look before you order', ...lines]
}

const groupOf = (number: string): string => number.split('.')[0] ?? number

function assemblyLines({ assembly }: FrameReport): string[] {
  if (assembly.length === 0) return []
  return ['Order of assembly', ...assembly.map((step, i) => `${i + 1}. ${step}`)]
}

/** The three that matter most. */
function costDoubtLines({ costDoubt, total }: FrameReport, locale?: string): string[] {
  const { currency } = total.cost
  const words = costDoubt
    .slice(0, 3)
    .map(({ name, money }) => `${name} ±${formatMoney(money, currency, locale)}`)
  return words.length === 0 ? [] : [`Cost with spares is unsure by: ${words.join(', ')}`]
}

function learnedLines({ readings, learned, learnedHours }: FrameReport, locale?: string): string[] {
  if (readings.length === 0 && learned.length === 0 && learnedHours === null) return []
  const rows = readings.map(({ kind, name, pieces: count, value, ratio, outcome }) => [
    count === null || kind === 'clock' ? name : `${count} × ${name}`,
    readingWords(kind, value, locale),
    fateWords(outcome, ratio, locale),
  ])
  return [
    'Read off scale and clock',
    ...align([['what', 'reading', 'what came of it'], ...rows]),
    ...learned.map(({ spool, factor, from }) => {
      const plastic = MATERIALS.find(({ id }) => id === spool)?.name ?? spool
      return learnedWords(plastic, factor, from, locale)
    }),
    ...(learnedHours === null
      ? []
      : [learnedHoursWords(learnedHours.factor, learnedHours.from, locale)]),
  ]
}

function readingWords(
  kind: FrameReport['readings'][number]['kind'],
  value: number,
  locale?: string,
): string {
  if (kind === 'file') return formatWithUnit(value / 1000, 'cm3', locale)
  if (kind === 'clock' || kind === 'file time') return formatHours(value, locale)
  return formatMass(value, locale)
}

function ledgerLines({ ledger, limits, standing, total }: FrameReport, locale?: string): string[] {
  const mass = (grams: number): string => formatMass(grams, locale)
  const rows = ledger.lines.map((line) => [
    `${line.quantity} × ${line.name}`,
    line.group,
    line.status,
    mass(line.massG),
    mass(line.quantity * line.massG),
    formatMoney(line.costEach ?? Number.NaN, total.cost.currency, locale),
  ])
  const sum = (name: string, grams: number) => [name, '', '', '', mass(grams), '']
  const { limitG, marginG } = ledger
  return [
    'Aircraft',
    ...align([
      ['line', 'group', 'status', 'each', 'together', 'cost each'],
      ...rows,
      sum('basic mass', ledger.basicMassG),
      sum('growth', ledger.growthG),
      sum('predicted mass', ledger.predictedMassG),
      ...(limitG === null ? [] : [sum('limit', limitG)]),
      ...(marginG === null ? [] : [sum('margin', marginG)]),
      ...(limits.printedG === null ? [] : [sum('limit of the printed parts', limits.printedG)]),
    ]),
    standing,
  ]
}

function oddsLines({ odds }: FrameReport, locale?: string): string[] {
  if (odds.length === 0) return []
  const rows = odds.map(({ name, thresholdG, readOn, chanceBelow, verdict }) => [
    name,
    // Exact: three digits would make 250 g of 249.48 g.
    `${formatAll(thresholdG, 2, locale)} g`,
    readOn ?? '',
    chanceWords(chanceBelow, locale),
    VERDICT_WORDS[verdict],
  ])
  const head = ['line', 'below', 'read', 'chance', '']
  return ['Odds to end below, of the lines as they stand', ...align([head, ...rows])]
}

function twinLines({ twin, total }: FrameReport, locale?: string): string[] {
  if (twin.length === 0) return []
  const rows = twin.map((one) => [
    one.part,
    one.material,
    formatWithUnit(one.plateMm, 'mm', locale),
    formatMass(one.massG, locale),
    formatMoney(one.cost, total.cost.currency, locale),
  ])
  const head = ['part', 'plate', 'thickness', 'mass', 'cost']
  return ['Cut from plate instead, one piece', ...align([head, ...rows])]
}

function armLines({ arms }: FrameReport, locale?: string): string[] {
  if (arms.length === 0) return []
  const hz = (range: Range): string => formatRange(range, (value) => formatNumber(value, locale, 0))
  const rows = arms.map(({ part, freeMm, printedHz, plateHz, hoverTurnHz, bladePassHz }) => [
    part,
    formatWithUnit(freeMm, 'mm', locale),
    hz(printedHz),
    hz(plateHz),
    hz(hoverTurnHz),
    hz(bladePassHz),
  ])
  const head = ['arm', 'free', 'printed Hz', 'cut Hz', 'propeller turns, Hz', 'blades pass, Hz']
  return ['First tone of the arms; clamps soften it', ...align([head, ...rows])]
}

function balanceLines({ balance }: FrameReport, locale?: string): string[] {
  if (balance === null) return []
  const [x, y, z] = balance.cgMm
  const side = (mm: number, more: string, less: string): string =>
    `${formatNumber(Math.abs(mm), locale)} mm ${mm < 0 ? less : more}`
  const [roll, pitch, yaw] = balance.inertiaKgM2.map((value) => formatNumber(value * 1e6, locale))
  return [
    'Balance',
    `centre of gravity: ${side(x, 'forward', 'aft')}, ${side(y, 'left', 'right')}, ${side(z, 'up', 'down')}`,
    `inertia: roll ${roll}, pitch ${pitch}, yaw ${yaw} kg mm²`,
  ]
}

function flightLines({ flight }: FrameReport, locale?: string): string[] {
  if (flight === null) return []
  const number = (value: number): string => formatNumber(value, locale)
  const percent = (share: number): string => `${formatNumber(100 * share, locale, 0)} %`
  const beyond = flight.validated ? '' : '; outside what was measured'
  return [
    'Hover',
    `all-up weight ${formatMass(flight.auwG, locale)}, thrust to weight ${number(flight.thrustToWeight)}`,
    `power ${number(flight.hoverW.mid)} W, likely ${formatRange(flight.hoverW, number)} W`,
    `efficiency ${percent(flight.efficiency.mid)}, ` +
      `likely ${formatRange(flight.efficiency, percent)}${beyond}`,
    `throttle ${percent(flight.hoverThrottle)} by the square-root rule, ` +
      `${percent(flight.hoverThrottleLinear)} by the linear one`,
    `time ${number(flight.hoverMin.mid)} min, likely ${formatRange(flight.hoverMin, number)} min`,
    `payload left ${formatMass(flight.payloadG, locale)} until thrust is twice the weight`,
    `one gram more: ${withSign(flight.sPerGram, number(flight.sPerGram))} s of hover`,
  ]
}

function cruiseLines({ cruise }: FrameReport, locale?: string): string[] {
  if (cruise === null) return []
  const number = (value: number): string => formatNumber(value, locale)
  const { speedMS, powerW, minutes, distanceKm } = cruise
  return [
    `Cruise at ${number(speedMS)} m/s`,
    `power ${number(powerW.mid)} W, likely ${formatRange(powerW, number)} W`,
    `time ${number(minutes.mid)} min, likely ${formatRange(minutes, number)} min`,
    `distance ${number(distanceKm.mid)} km, likely ${formatRange(distanceKm, number)} km`,
  ]
}

function noteLines({ parts, notes }: FrameReport): string[] {
  return [
    ...parts.flatMap((part) => {
      if (isFailed(part)) return [`Not priced: “${part.name}”: ${part.error.message}`]
      return partNotes(part).map((note) => `${part.name}: ${note}`)
    }),
    ...notes,
  ]
}

/** A part without figures whose pieces were weighed: its mass is in the sums below. */
function weighedRow({ name, quantity, massG }: FramePart, locale?: string): string[][] {
  if (massG === undefined) return []
  const mass = (value: number): string => formatMass(value, locale)
  const nothing = ['–', '–', '–', '–', '–']
  return [[`${quantity} × ${name}`, mass(massG.mid), formatRange(massG, mass), ...nothing]]
}
