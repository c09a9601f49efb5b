import { leftOutNames } from '../../core/frame/sayings.ts'
import type { Range } from '../../core/model/figures.ts'
import type { LedgerLine } from '../../core/frame/ledger.ts'
import { frameSummary, ledgerRows, type FrameState, type LedgerRow } from '../store/derived.ts'

/** The byte order mark by which spreadsheets know UTF-8. */
const MARK = '\uFEFF'

/**
 * Beginnings a spreadsheet may take for a formula (OWASP Foundation, “CSV Injection”: = + - @, tab,
 * carriage return, line feed), their full-width forms, and the apostrophe itself, so that what is
 * put in front can be told apart.
 */
const RISKY_START = /^[=+\-@\t\r\n'＝＋－＠]/

/**
 * The ledger as comma-separated values (RFC 4180), one line a part and one for the frame, then all
 * that is bought and the aircraft; a figure that is not there yet is empty.
 *
 * Names and notes never run as formulas: see `RISKY_START`. Numbers have a point, whatever the
 * locale.
 */
export function ledgerCsv(state: FrameState): string {
  const { currency } = state.frame.prices
  const measured = [
    ['Mass', 'g'],
    ['Cost', currency],
    ['Hours', 'h'],
  ] as const
  const head = [
    'Part',
    'File',
    'Pieces',
    'Spare',
    'Of them mirrored',
    'Material',
    'Figures from',
    ...measured.flatMap(([name, unit]) =>
      ['', ' low', ' high'].map((which) => `${name}${which} (${unit})`),
    ),
    'Note',
  ]
  const { sum } = frameSummary(state)
  const total = [
    text(`Total: ${state.frame.name}`),
    '',
    String(sum.pieces.flying),
    String(sum.pieces.spares),
    '',
    '',
    '',
    ...figures({ ...sum.withSpares, massG: sum.printed.massG }),
    text(leftOutNames(sum.leftOut) ?? ''),
  ]
  const { lines: all, basicMassG, cost } = sum.ledger
  const bought = all.filter(({ group }) => group !== 'printed')
  const allUp = [
    text('All up, spares left out'),
    '',
    '',
    '',
    '',
    '',
    '',
    ...boughtFigures(basicMassG, cost),
    text(''),
  ]
  const lines = [
    head.map(text),
    ...ledgerRows(state).map(lineOf),
    total,
    ...(bought.length === 0 ? [] : [...bought.map(boughtLine), allUp]),
  ]
  return MARK + lines.map((line) => `${line.join(',')}\r\n`).join('')
}

const WEIGHED = {
  weighed: 'the scale',
  'weighed before': 'the scale, before a change',
} as const

const BASIS: Readonly<Record<LedgerRow['basis'], string>> = {
  census: 'counted layers',
  coarse: 'some layers, coarse',
  rough: 'volume and area, rough',
  none: 'none yet',
}

function lineOf({ part, material, sum, basis }: LedgerRow): readonly string[] {
  return [
    text(part.name),
    text(part.fileName),
    String(part.quantity),
    String(part.spares),
    String(part.mirrored),
    text(material.name),
    text(sum === null || sum.massFrom === 'calculated' ? BASIS[basis] : WEIGHED[sum.massFrom]),
    ...(sum === null ? NO_FIGURES : figures({ ...sum.withSpares, massG: sum.flying.massG })).map(
      (cell, i) => (i >= MASS_CELLS && sum?.figures === null ? '' : cell),
    ),
    text(part.note),
  ]
}

/** Of all its pieces; the ledger's one list, screws of joints included. */
function boughtLine({ name, quantity, status, massTotalG, costEach }: LedgerLine) {
  const what = [text(name), '', String(quantity), '', '', '', text(status)]
  return [...what, ...boughtFigures(massTotalG, quantity * costEach), text('')]
}

/** Neither low nor high: those of a sum are the page's. Nothing bought takes hours. */
function boughtFigures(massG: number, cost: number): readonly string[] {
  return [massG.toFixed(3), '', '', cost.toFixed(4), '', '', '', '', '']
}

/** Middle, low and high of each. */
const MASS_CELLS = 3
const NO_FIGURES = Array.from({ length: 9 }, () => '')

interface Figures {
  readonly massG: Range
  readonly cost: Range
  readonly timeS: Range
}

/** What flies is weighed; what is printed, spares included, is paid for and takes its hours. */
function figures({ massG, cost, timeS }: Figures): readonly string[] {
  return [...numbers(massG, 1, 3), ...numbers(cost, 1, 4), ...numbers(timeS, 3600, 4)]
}

function numbers({ mid, low, high }: Range, per: number, digits: number): readonly string[] {
  return [mid, low, high].map((value) => (value / per).toFixed(digits))
}

function text(value: string): string {
  const safe = RISKY_START.test(value) ? `'${value}` : value
  return `"${safe.replaceAll('"', '""')}"`
}
