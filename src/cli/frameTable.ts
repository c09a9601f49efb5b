import {
  formatMass,
  formatMoney,
  formatNumber,
  formatRange,
  formatWithUnit,
  withSign,
} from '../core/figures/format.ts'
import type { FrameReport } from './frameReport.ts'
import { isFailed } from './report.ts'
import { align, cellsOf, HEAD } from './table.ts'

/** The frame as aligned text: parts, ledger, twin, balance, flight, then failures and notes. Ends with a line feed. */
export function frameTableOf(report: FrameReport, locale?: string): string {
  const blocks = [
    partLines(report, locale),
    ledgerLines(report, locale),
    twinLines(report, locale),
    balanceLines(report, locale),
    flightLines(report, locale),
    noteLines(report),
  ]
  const text = blocks.filter((block) => block.length > 0).map((block) => block.join('\n'))
  return `${text.join('\n\n').replaceAll('\u00a0', ' ')}\n`
}

function partLines({ parts, total, totalWithSpares }: FrameReport, locale?: string): string[] {
  const rows = parts.flatMap((part) =>
    isFailed(part) ? [] : [[`${part.quantity} × ${part.name}`, ...cellsOf(part, locale)]],
  )
  if (rows.length === 0) return []
  const spares = totalWithSpares.quantity - total.quantity
  const sums = [[`total, ${pieces(total.quantity)}`, ...cellsOf(total, locale)]]
  if (spares > 0)
    sums.push([
      `with ${spares} ${spares === 1 ? 'spare' : 'spares'}`,
      ...cellsOf(totalWithSpares, locale),
    ])
  return ['Parts, figures of one piece', ...align([HEAD, ...rows, ...sums])]
}

function ledgerLines({ ledger, total }: FrameReport, locale?: string): string[] {
  const mass = (grams: number): string => formatMass(grams, locale)
  const rows = ledger.lines.map((line) => [
    `${line.quantity} × ${line.name}`,
    line.group,
    line.status,
    mass(line.massG),
    mass(line.quantity * line.massG),
    formatMoney(line.costEach, total.cost.currency, locale),
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
    ]),
  ]
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

function balanceLines({ balance }: FrameReport, locale?: string): string[] {
  if (balance === null) return []
  const [x, y, z] = balance.cgMm.map((mm) => formatNumber(mm, locale))
  const [roll, pitch, yaw] = balance.inertiaKgM2.map((value) => formatNumber(value * 1e6, locale))
  return [
    'Balance',
    `centre of gravity: ${x} mm forward, ${y} mm left, ${z} mm up`,
    `inertia: roll ${roll}, pitch ${pitch}, yaw ${yaw} kg mm²`,
  ]
}

function flightLines({ flight }: FrameReport, locale?: string): string[] {
  if (flight === null) return []
  const number = (value: number): string => formatNumber(value, locale)
  const percent = (share: number): string => `${formatNumber(100 * share, locale, 0)} %`
  return [
    'Hover',
    `all-up weight ${formatMass(flight.auwG, locale)}, thrust to weight ${number(flight.thrustToWeight)}`,
    `power ${number(flight.hoverW.mid)} W, likely ${formatRange(flight.hoverW, number)} W`,
    `throttle ${percent(flight.hoverThrottle)} by the square-root rule, ${percent(flight.hoverThrottleLinear)} by the linear one`,
    `time ${number(flight.hoverMin.mid)} min, likely ${formatRange(flight.hoverMin, number)} min`,
    `payload left ${formatMass(flight.payloadG, locale)} until thrust is twice the weight`,
    `one gram more: ${withSign(flight.sPerGram, number(flight.sPerGram))} s of hover`,
  ]
}

function noteLines({ parts, notes }: FrameReport): string[] {
  return [
    ...parts.flatMap((part) => {
      if (isFailed(part)) return [`Not priced: “${part.name}”: ${part.error.message}`]
      return part.findings.map(({ message }) => `${part.name}: ${message}`)
    }),
    ...notes,
  ]
}

function pieces(count: number): string {
  return `${count} ${count === 1 ? 'piece' : 'pieces'}`
}
