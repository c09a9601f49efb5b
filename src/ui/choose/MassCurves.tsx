import { useRef } from 'react'
import { scaleLinear } from 'd3-scale'
import { PATTERN_NAMES } from '../../core/data/limits.ts'
import type { Recipe } from '../../core/model/settings.ts'
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
  /** Of the setting, where it is a number; else its place among the choices. */
  readonly value: number
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
          const values = panel.points.map(({ value }) => value)
          const x = scaleLinear(
            [Math.min(...values), Math.max(...values)],
            [left + 10, left + panelPx - 24],
          )
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
                  d={`M${panel.points.map(({ value, frameG }) => `${x(value)} ${y(frameG)}`).join('L')}`}
                />
              ) : null}
              {panel.points.map(({ words, value, frameG, isNow }) => (
                <circle
                  key={words}
                  className={isNow ? 'curve-now' : 'curve-point'}
                  cx={x(value)}
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
  const ofKey = (key: StepKey) => effects.filter(({ step }) => step.key === key)
  const curve = (
    key: StepKey,
    name: string,
    valueOf: (recipe: Partial<Recipe>) => number | undefined,
    wordsOf: (value: number) => string,
  ): readonly Panel[] => {
    const present = valueOf(recipe) ?? 0
    const others = ofKey(key).map(({ step, frameG }): MassPoint => {
      const value = valueOf(step.recipe) ?? present
      return { words: wordsOf(value), value, frameG, isNow: false }
    })
    const now = { words: wordsOf(present), value: present, frameG: printedG, isNow: true }
    const points = [...others, now].toSorted((a, b) => a.value - b.value)
    return others.length === 0 ? [] : [{ name, points, isCurve: true }]
  }
  const choices = (key: StepKey, name: string, now: string): readonly Panel[] => {
    const others = ofKey(key).map(({ step, frameG }) => ({
      words: step.words,
      frameG,
      isNow: false,
    }))
    const points = [...others, { words: now, frameG: printedG, isNow: true }]
      .toSorted((a, b) => a.frameG - b.frameG)
      .map((point, value) => ({ ...point, value }))
    return others.length === 0 ? [] : [{ name, points, isCurve: false }]
  }
  const mm = (value: number) => showLength(value, 2)
  const { topSkins, bottomSkins, pattern } = recipe
  const skins = (top: number) => `${top}, ${top + bottomSkins - topSkins}`
  return [
    { name: 'Infill', points: infill, isCurve: true },
    ...curve('walls', 'Walls', ({ walls }) => walls, String),
    ...curve('skins', 'Skins', (of) => of.topSkins, skins),
    ...curve('layer', 'Layer', ({ layerMm }) => layerMm, mm),
    ...curve('line', 'Line', ({ lineMm }) => lineMm, mm),
    ...choices('pattern', 'Pattern', PATTERN_NAMES[pattern].toLowerCase()),
    ...choices('plastic', 'Plastic', material.name),
  ]
}
