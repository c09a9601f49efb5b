import { PATTERN_NAMES } from '../../core/data/limits.ts'
import type { Pattern } from '../../core/model/settings.ts'
import { Choice } from '../fields/Choice.tsx'
import type { PartEdit } from './usePartEdit.ts'

/**
 * What is counted for each pattern, said in a sentence; core/figures/infill.ts holds the numbers.
 */
const MODELLED: Readonly<Record<Pattern, string>> = {
  lines: 'Counted as straight lines, one way on each layer and across on the next, turns included.',
  grid: 'Counted as straight lines both ways on every layer, twice as far apart, turns included.',
  triangles:
    'Counted as straight lines three ways on every layer, three times as far apart, turns included.',
  honeycomb:
    'Counted as winding lines, a third longer than straight ones and set as much further apart.',
  gyroid:
    'Counted as waving lines, a fifth longer than straight ones and set as much further apart.',
}

const PATTERNS = Object.keys(PATTERN_NAMES) as Pattern[]

interface PatternFieldProps {
  readonly pattern: Pattern
  readonly write: PartEdit
}

export function PatternField({ pattern, write }: PatternFieldProps) {
  return (
    <Choice
      label="Pattern"
      value={pattern}
      options={PATTERNS.map((id) => ({ id, name: PATTERN_NAMES[id] }))}
      hint={MODELLED[pattern]}
      onChange={(next) => {
        write.edit({ recipe: { pattern: next } })
      }}
    />
  )
}
