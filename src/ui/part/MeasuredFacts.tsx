import type { Census } from '../../core/census.ts'
import type { PartFigures } from '../../core/figures.ts'
import { formatFilament, formatVolume } from '../../core/figures/format.ts'
import type { PartRead } from '../../state/types.ts'
import { showNumber } from '../show.ts'

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
export function MeasuredFacts({ read, census, figures }: MeasuredFactsProps) {
  const { measure } = read
  const { min, max } = measure.boundsMm
  const size = [max[0] - min[0], max[1] - min[1], max[2] - min[2]]
  const facts: (readonly [string, string])[] = [
    ['Size', `${size.map((side) => showNumber(side, 1)).join(' × ')} mm`],
    ['Volume', formatVolume(measure.volumeMm3)],
    ['Surface', `${showNumber(measure.areaMm2 / 100, 1)} cm²`],
    ['Triangles', showNumber(measure.triangles, 0)],
    ['Bodies', showNumber(measure.bodies, 0)],
    ['File', FORMAT_WORDS[read.format]],
  ]
  if (census !== null) {
    facts.push(['Layers', showNumber(census.layers.count, 0)])
    facts.push(['Printed height', `${showNumber(census.heightMm, 1)} mm`])
  }
  if (figures !== null) facts.push(['Filament', `${formatFilament(figures.filamentM.mid)} a piece`])
  return (
    <dl className="facts">
      {facts.map(([words, figure]) => (
        <div key={words}>
          <dt>{words}</dt>
          <dd>{figure}</dd>
        </div>
      ))}
    </dl>
  )
}
