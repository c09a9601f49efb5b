import { useRef } from 'react'
import { scaleLinear } from 'd3-scale'
import { PATTERN_NAMES } from '../../core/data/limits.ts'
import { formatGrams } from '../../core/words/format.ts'
import { massUnit } from '../../core/words/shownUnits.ts'
import { frameSum, type LedgerRow } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { SaveDrawing } from '../drawing/SaveDrawing.tsx'
import { useWidth } from '../fields/useWidth.ts'
import type { StepKey } from '../part/steps.ts'
import { useSteps, type StepEffect } from '../part/useSteps.ts'
import { showLength, showMass } from '../show.ts'
import { curvesLayout } from './curvesLayout.ts'

/** A value of a setting, and what the frame prints then. */
export interface MassPoint {
  readonly words: string
  readonly frameG: number
  readonly isNow: boolean
}

interface MassCurvesProps {
  readonly row: LedgerRow
  readonly infill: readonly MassPoint[]
}

interface Panel {
  readonly name: string
  readonly points: readonly MassPoint[]
  /** Whether what lies between two points means something. */
  readonly isCurve: boolean
}

/** The frame's printed mass over each setting of a part, all on one axis, so that they can be compared. */
export function MassCurves({ row, infill }: MassCurvesProps) {
  const place = useRef<HTMLElement>(null)
  const width = Math.round(useWidth(place, 340))
  const effects = useSteps(row)
  const printedG = useAppState((state) => frameSum(state).printed.massG.mid)
  const limitG = useAppState((state) => frameSum(state).limits.strictest?.printedG ?? null)
  const carbonG = useAppState((state) => state.frame.carbon?.massG ?? null)
  const panels = panelsOf(row, infill, effects, printedG)
  const masses = panels.flatMap(({ points }) => points.map(({ frameG }) => frameG))
  const { low, high, columns, panelPx, rowPx, heightPx } = curvesLayout(
    masses,
    panels.length,
    width,
  )
  const near = (massG: number | null): massG is number =>
    massG !== null && massG > low && massG < high
  return (
    <figure ref={place} className="mass-curves">
      <figcaption>
        Printed mass of the frame over each setting of {row.part.name}, {massUnit()}
        <SaveDrawing of={place} name={`${row.part.name} settings`} />
      </figcaption>
      <svg
        viewBox={`0 0 ${width} ${heightPx}`}
        role="img"
        aria-label="Printed mass over each setting, on one axis; the figures stand in the list below."
      >
        {panels.map((panel, i) => {
          const left = 44 + (i % columns) * panelPx
          const top = 22 + Math.floor(i / columns) * rowPx
          const bottom = top + rowPx - 46
          const y = scaleLinear([low, high], [bottom, top])
          const x = (at: number) =>
            left + 10 + ((panelPx - 34) * at) / Math.max(1, panel.points.length - 1)
          const right = left + panelPx - 14
          return (
            <g key={panel.name}>
              <text className="curve-name" x={left} y={top - 8}>
                {panel.name}
              </text>
              {y.ticks(4).map((massG) => (
                <g key={massG} className="chart-tick">
                  <line x1={left} x2={right} y1={y(massG)} y2={y(massG)} />
                  {i % columns === 0 ? (
                    <text x={left - 6} y={y(massG)} textAnchor="end" dominantBaseline="middle">
                      {formatGrams(massG)}
                    </text>
                  ) : null}
                </g>
              ))}
              {near(limitG) ? (
                <path className="curve-limit" d={`M${left} ${y(limitG)}H${right}`} />
              ) : null}
              {near(carbonG) ? (
                <path className="curve-carbon" d={`M${left} ${y(carbonG)}H${right}`} />
              ) : null}
              {panel.isCurve ? (
                <path
                  className="curve-line"
                  d={`M${panel.points.map(({ frameG }, at) => `${x(at)} ${y(frameG)}`).join('L')}`}
                />
              ) : null}
              {panel.points.map(({ words, frameG, isNow }, at) => (
                <circle
                  key={words}
                  className={isNow ? 'curve-now' : 'curve-point'}
                  cx={x(at)}
                  cy={y(frameG)}
                  r={isNow ? 4.5 : 3}
                >
                  <title>{`${words}: ${showMass(frameG)}`}</title>
                </circle>
              ))}
              <text className="chart-number" x={left} y={bottom + 18}>
                {panel.points.find(({ isNow }) => isNow)?.words}
              </text>
            </g>
          )
        })}
      </svg>
      <p className="hint">
        {near(limitG) ? 'The full line is the limit. ' : ''}
        {near(carbonG) ? 'The dotted line is the carbon frame. ' : ''}
        Filled: as it is. Points without a line between them are other choices, lightest first.
      </p>
      <ul className="unseen">
        {panels.map(({ name, points }) => (
          <li key={name}>
            {name}: {points.map(({ words, frameG }) => `${words} ${showMass(frameG)}`).join(', ')}
          </li>
        ))}
      </ul>
    </figure>
  )
}

function panelsOf(
  { part: { recipe }, material }: LedgerRow,
  infill: readonly MassPoint[],
  effects: readonly StepEffect[],
  printedG: number,
): readonly Panel[] {
  const made = (key: StepKey, name: string, now: string, wordsOf: (of: StepEffect) => string) => {
    const own = effects.filter(({ step }) => step.key === key)
    const isCurve = key !== 'pattern' && key !== 'plastic'
    const others = own.map((one) => ({ words: wordsOf(one), frameG: one.frameG, isNow: false }))
    const present = { words: now, frameG: printedG, isNow: true }
    // Steps come as one less and one more; choices have no order but their mass.
    const points = isCurve
      ? [...others.slice(0, 1), present, ...others.slice(1)]
      : [...others, present].toSorted((a, b) => a.frameG - b.frameG)
    return own.length < (isCurve ? 2 : 1) ? [] : [{ name, points, isCurve }]
  }
  return [
    { name: 'Infill', points: infill, isCurve: true },
    ...made('walls', 'Walls', String(recipe.walls), ({ step }) => String(step.recipe.walls)),
    ...made(
      'skins',
      'Skins',
      `${recipe.topSkins}, ${recipe.bottomSkins}`,
      ({ step }) => `${step.recipe.topSkins}, ${step.recipe.bottomSkins}`,
    ),
    ...made('layer', 'Layer', showLength(recipe.layerMm, 2), ({ step }) => step.words),
    ...made('line', 'Line', showLength(recipe.lineMm, 2), ({ step }) => step.words),
    ...made(
      'pattern',
      'Pattern',
      PATTERN_NAMES[recipe.pattern].toLowerCase(),
      ({ step }) => step.words,
    ),
    ...made('plastic', 'Plastic', material.name, ({ step }) => step.words),
  ]
}
