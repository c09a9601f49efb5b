import type { Census } from '../../core/model/census.ts'
import type { PartFigures, TravelPath } from '../../core/model/figures.ts'
import { formatFilament, formatVolume, formatWithUnit } from '../../core/words/format.ts'
import type { PartRead } from '../../state/store/types.ts'
import { showNumber, showSide, showArea } from '../show.ts'
import { TermList } from './TermList.tsx'
import { lengthUnit } from '../../core/words/shownUnits.ts'

interface MeasuredFactsProps {
  readonly read: PartRead
  readonly census: Census | null
  readonly figures: PartFigures | null
}

const FORMAT_WORDS = {
  'stl-binary': 'STL, binary',
  'stl-ascii': 'STL, text',
  obj: 'OBJ',
  '3mf': '3MF',
} as const

/** What was measured on the mesh, before any price. */
export function MeasuredList({ read, census, figures }: MeasuredFactsProps) {
  const { measure } = read
  const { min, max } = measure.boundsMm
  const size = [max[0] - min[0], max[1] - min[1], max[2] - min[2]]
  const terms: (readonly [string, string])[] = [
    ['Size', `${size.map(showSide).join(' × ')} ${lengthUnit()}`],
    ['Volume', volumeWords(measure.volumeMm3)],
    ['Surface', areaWords(measure.areaMm2)],
    ['Triangles', showNumber(measure.triangles, 0)],
    ['Bodies', showNumber(measure.bodies, 0)],
    ['File', FORMAT_WORDS[read.format]],
  ]
  if (census !== null) {
    terms.push(['Layers', showNumber(census.layers.count, 0)])
    terms.push(['Printed height', `${showSide(census.heightMm)} ${lengthUnit()}`])
  }
  if (figures !== null) terms.push(['Filament', `${formatFilament(figures.filamentM.mid)} a piece`])
  const travel = figures?.travel ?? null
  if (travel !== null) terms.push(['Travel', travelWords(travel)])
  return <TermList of={terms} />
}

function areaWords(areaMm2: number): string {
  return showArea(areaMm2)
}

function travelWords({ travelM, retracts }: TravelPath): string {
  return `${formatFilament(travelM)} a piece, filament drawn back ${showNumber(retracts, 0)} times`
}

function volumeWords(volumeMm3: number): string {
  return volumeMm3 < 0.01 ? `under ${formatWithUnit(0.01, 'mm3')}` : formatVolume(volumeMm3)
}
