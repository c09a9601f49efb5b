import { bindingWords, changeWords } from '../core/choose/sayings.ts'
import type { Range } from '../core/model/figures.ts'
import {
  formatHours,
  formatMass,
  formatMoney,
  formatNumber,
  formatRange,
  formatWithUnit,
} from '../core/words/format.ts'
import { nameIn, type FindReport, type FoundSolution } from './findReport.ts'
import { align } from './table.ts'

/** What a search found as aligned text, and what each solution changes. Ends with a line feed. */
export function findTableOf(report: FindReport, locale?: string): string {
  const { solutions, massG, now, notes } = report
  const blocks = [
    solutions.length === 0
      ? [
          'Nothing found.',
          ...bindingWords(report.bindings, report.currency, nameIn(report), locale),
        ]
      : [
          `${countWords(report)}; none is beaten in all of grams, hours, cost and stiffness`,
          ...align([
            ['', 'printed', 'likely', 'hours', 'cost', 'stiffness', 'parts changed'],
            ...[...solutions.entries()].map(([i, one]) =>
              rowOf(`${i + 1}`, one, massG[i], report, locale),
            ),
            rowOf('now', now, undefined, report, locale),
          ]),
        ],
    ...solutions.map((one, i) => [
      `${i + 1}`,
      ...[...changesOf(one, now, locale), ...givesOf(one, locale)].map((line) => `  ${line}`),
    ]),
    [...notes, ...STIFFNESS_NOTES],
  ]
  const text = blocks.filter((block) => block.length > 0).map((block) => block.join('\n'))
  return `${text.join('\n\n').replaceAll('\u00a0', ' ')}\n`
}

function countWords({ solutions, count }: FindReport): string {
  if (count > solutions.length) {
    return `${solutions.length} of ${count} solutions, those that differ most`
  }
  return count === 1 ? '1 solution' : `${count} solutions`
}

const STIFFNESS_NOTES = [
  'stiffness is that of the part that loses most, over the part as it stands, from sections of its',
  'layers: good to 15 %. Printed plastic scatters, creeps and ages. A frame that breaks in the air',
  'falls: try it low, props away from people, and ask someone qualified before you fly near any.',
]

function rowOf(
  name: string,
  one: FoundSolution,
  massG: Range | undefined,
  { currency, now }: FindReport,
  locale?: string,
): string[] {
  return [
    name,
    formatMass(one.massG, locale),
    massG === undefined ? '' : formatRange(massG, (value) => formatMass(value, locale)),
    formatHours(3600 * one.hours, locale),
    formatMoney(one.cost, currency, locale),
    one.stiffness === null ? '–' : `${formatNumber(100 * one.stiffness, locale, 0)} %`,
    `${changesOf(one, now, locale).length}`,
  ]
}

function givesOf({ gives = {} }: FoundSolution, locale?: string): readonly string[] {
  return Object.entries(gives).map(([name, one]) =>
    one === null
      ? `${name}: nothing is known of how it gives`
      : `${name} gives ${formatWithUnit(one.deflectionMm, 'mm', locale)}` +
        (one.firstHz === null ? '' : ` and rings at ${formatNumber(one.firstHz, locale, 0)} Hz`),
  )
}

function changesOf(one: FoundSolution, now: FoundSolution, locale?: string): readonly string[] {
  return Object.entries(one.recipes).flatMap(([name, recipe]) => {
    const before = now.recipes[name]
    const words = before === undefined ? [] : changeWords(before, recipe, locale)
    return words.length === 0 ? [] : [`${name}: ${words.join(', ')}`]
  })
}
