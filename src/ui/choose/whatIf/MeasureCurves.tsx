import { useRef } from 'react'
import { scaleLinear } from 'd3-scale'
import { frameSum } from '../../../state/store/derived.ts'
import { useAppState } from '../../appContext.ts'
import { SaveDrawing } from '../../drawing/SaveDrawing.tsx'
import { useChartWidth } from '../../fields/useChartWidth.ts'
import { curvesLayout } from '../curvesLayout.ts'
import { CurvePanel } from './CurvePanel.tsx'
import { PANEL_NAMES, pointWords } from './pointWords.ts'
import type { Measure } from './measures.ts'
import type { WhatIfPanel, WhatIfPoint } from './useWhatIf.ts'

export interface CurvesProps {
  readonly partName: string
  readonly panels: readonly WhatIfPanel[]
  readonly nameOf: (materialId: string) => string
  readonly onTake: (point: WhatIfPoint) => void
  /** Of the table that says what the pictures do. */
  readonly twinId: string
}

/** One measure over every setting of a part, all on one axis, so that they can be compared. */
export function MeasureCurves({
  measure,
  partName,
  panels: all,
  nameOf,
  onTake,
  twinId,
}: CurvesProps & { readonly measure: Measure }) {
  const place = useRef<HTMLElement>(null)
  const width = Math.round(useChartWidth(place, 340))
  const limitG = useAppState((state) => frameSum(state).limits.strictest?.printedG ?? null)
  const carbonG = useAppState((state) => state.frame.carbon?.massG ?? null)
  const { panels, beyond } = withoutFar(all, measure, nameOf)
  const values = panels.flatMap(({ points }) =>
    points.flatMap(({ worth }) => measure.valueOf(worth) ?? []),
  )
  if (values.length === 0) return null
  const layout = curvesLayout(values, panels.length, width)
  const { low, high, columns, panelPx, rowPx, heightPx } = layout
  // A row of panels is kept clear of the names of the next.
  const belowPx = columns < panels.length ? 60 : 46
  const isMass = measure.id === 'massG'
  const near = (massG: number | null): number | null =>
    isMass && massG !== null && massG > low && massG < high ? massG : null
  const limit = near(limitG)
  const carbon = near(carbonG)
  return (
    <figure ref={place} className="mass-curves">
      <figcaption>
        {measure.title}
        <SaveDrawing of={place} name={`${partName} ${measure.id}`} />
      </figcaption>
      <svg
        viewBox={`0 0 ${width} ${heightPx}`}
        role="group"
        aria-details={twinId}
        aria-label={`${measure.title}, over each setting of ${partName}`}
      >
        {panels.map((panel, i) => {
          const left = 44 + (i % columns) * panelPx
          const top = 22 + Math.floor(i / columns) * rowPx
          const y = scaleLinear([low, high], [top + rowPx - belowPx, top])
          return (
            <CurvePanel
              key={panel.key}
              panel={panel}
              measure={measure}
              box={{ left, top, width: panelPx, bottom: top + rowPx - belowPx }}
              y={y}
              hasAxis={i % columns === 0}
              limitG={limit}
              carbonG={carbon}
              nameOf={nameOf}
              onTake={onTake}
            />
          )
        })}
      </svg>
      {beyond.length === 0 ? null : <p className="hint">Off this picture: {beyond.join('; ')}.</p>}
      {isMass ? (
        <p className="hint">
          {limit === null ? '' : 'The full line is the limit. '}
          {carbon === null ? '' : 'The dotted line is the carbon frame. '}
          Filled: as it is
          <span className="screen-only">; drag it, or choose with the arrow keys</span>. Points
          without a line between them are other choices, lightest first.
        </p>
      ) : null}
    </figure>
  )
}

/** A deflection so many times the present one would press all others flat; the table has it. */
const FAR = 5

function withoutFar(
  panels: readonly WhatIfPanel[],
  { id, valueOf, words }: Measure,
  nameOf: (materialId: string) => string,
) {
  const own = panels.flatMap(({ points }) => points.filter(({ isNow }) => isNow))[0]
  const now = own === undefined ? null : valueOf(own.worth)
  if (id !== 'deflection' || now === null) return { panels, beyond: [] }
  const beyond: string[] = []
  const near = panels.map((panel) => ({
    ...panel,
    points: panel.points.filter((point) => {
      const value = valueOf(point.worth)
      if (value === null || value <= FAR * now) return true
      const setting = pointWords(panel.key, point.way, nameOf)
      beyond.push(`${PANEL_NAMES[panel.key].toLowerCase()} ${setting}, ${words(value)}`)
      return false
    }),
  }))
  return { panels: near, beyond }
}
