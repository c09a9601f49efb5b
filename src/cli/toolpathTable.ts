import { PATTERN_NAMES } from '../core/data/limits.ts'
import type { LineKind } from '../core/model/toolpath.ts'
import { formatFilament, formatHours, formatMass, formatNumber } from '../core/words/format.ts'
import type { ToolpathReport } from './priceToolpath.ts'

const KIND_NAMES: Readonly<Record<LineKind, string>> = {
  outer: 'outer walls',
  inner: 'inner walls',
  skin: 'skins',
  infill: 'infill',
  gap: 'gap lines',
}

/** A toolpath as text. Ends with a line feed. */
export function toolpathTableOf(report: ToolpathReport, locale?: string): string {
  const { recipe, kinds, massG, filamentM, depositMm3, timeS } = report
  const number = (value: number | null, unit = ''): string =>
    value === null ? 'not told' : `${formatNumber(value, locale)}${unit}`
  const lines: (readonly [string, string])[] = [
    ['plastic', `${formatMass(massG.mid, locale)}, ${formatFilament(filamentM, locale)}`],
    [
      'volume',
      `${number(depositMm3 / 1000, ' cm³')} of ${number(report.diameterMm, ' mm')} filament`,
    ],
    ['time', formatHours(timeS, locale)],
    ['layers', `${report.layers}, up to ${number(report.heightMm, ' mm')}`],
    [
      'layer height',
      `${number(recipe.layerMm, ' mm')}, first ${number(recipe.firstLayerMm, ' mm')}`,
    ],
    ['line width', number(recipe.lineMm, ' mm')],
    ['walls', number(recipe.walls)],
    ['skins', `${number(recipe.bottomSkins)} below, ${number(recipe.topSkins)} on top`],
    [
      'infill',
      `${number(recipe.infillPct, ' %')}${recipe.pattern === null ? '' : `, ${PATTERN_NAMES[recipe.pattern]}`}`,
    ],
    ['travel', `${number(report.travelM, ' m')}, drawn back ${report.retracts} times`],
  ]
  for (const [kind, { volumeMm3, widthMm, speedMmS }] of Object.entries(kinds)) {
    if (volumeMm3 === 0) continue
    lines.push([
      KIND_NAMES[kind as LineKind],
      `${number(volumeMm3 / 1000, ' cm³')}, ${number(widthMm, ' mm')} wide, ${number(speedMmS, ' mm/s')}`,
    ])
  }
  const { part } = report
  if (part === null) lines.push(['part', 'none of the meshes given'])
  if (part) {
    const pair = (laid: number, counted: number): string =>
      `${number(laid / 1000, ' cm³')} laid, ${number(counted / 1000, ' cm³')} counted`
    const or = part.alike.map((file) => ` or ${file}`).join('')
    lines.push(
      ['part', `${part.file}${or}, ${number(part.misfitMm, ' mm')} off`],
      ['its walls', pair(part.laid.wallMm3, part.counted.wallMm3)],
      ['its skins', pair(part.laid.skinMm3, part.counted.skinMm3)],
      ['its infill', pair(part.laid.infillMm3, part.counted.infillMm3)],
    )
  }
  const notes = report.findings.map(({ grade, message }) =>
    grade === 'note' ? message : `${grade}: ${message}`,
  )
  const table = lines.map(([name, value]) => `${name.padEnd(14)}${value}`)
  return `${[...table, ...(notes.length > 0 ? ['', ...notes] : [])].join('\n')}\n`
}
