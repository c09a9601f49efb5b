import { useState, type KeyboardEvent, type PointerEvent } from 'react'
import { scaleLinear, type ScaleLinear } from 'd3-scale'
import { showGhost } from '../../head/ghost.ts'
import { showMass } from '../../show.ts'
import type { Measure } from './measures.ts'
import { PANEL_NAMES, pointWords } from './pointWords.ts'
import type { CurvesProps } from './MeasureCurves.tsx'
import type { WhatIfPanel, WhatIfPoint } from './useWhatIf.ts'

interface CurvePanelProps extends Pick<CurvesProps, 'nameOf' | 'onTake'> {
  readonly panel: WhatIfPanel
  readonly measure: Measure
  readonly box: {
    readonly left: number
    readonly top: number
    readonly width: number
    readonly bottom: number
  }
  readonly y: ScaleLinear<number, number>
  /** First of its row: its axis has figures. */
  readonly hasAxis: boolean
  readonly limitG: number | null
  readonly carbonG: number | null
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
}

/**
 * One setting: points, the present one filled. It is dragged, and what it is let go on is taken; in
 * the first measure it is a slider for the keyboard too.
 */
export function CurvePanel(props: CurvePanelProps) {
  const { panel, measure, box, y, hasAxis, limitG, carbonG, nameOf, onTake } = props
  const { key, isCurve, points } = panel
  const [held, setHeld] = useState<WhatIfPoint | null>(null)
  const name = PANEL_NAMES[key]
  const wordsOf = (point: WhatIfPoint): string => pointWords(key, point.way, nameOf)
  const right = box.left + box.width - 14
  const values = points.map(({ value }) => value)
  const x = scaleLinear(
    [Math.min(...values), Math.max(...values)],
    [box.left + 10, box.left + box.width - 24],
  )
  const drawn = points.flatMap((point) => {
    const value = measure.valueOf(point.worth)
    return value === null ? [] : [{ point, value, cx: x(point.value), cy: y(value) }]
  })
  const at = points.findIndex(({ isNow }) => isNow)
  const now = points[at]
  const ghostOf = (point: WhatIfPoint) => ({
    massG: point.worth.massG,
    words: `${name.toLowerCase()} ${wordsOf(point)}`,
  })
  const nearest = (event: PointerEvent<SVGGElement>): WhatIfPoint | null => {
    const svg = event.currentTarget.ownerSVGElement
    const toSvg = svg?.getScreenCTM()?.inverse()
    if (toSvg === undefined) return null
    const { x: px } = new DOMPoint(event.clientX, event.clientY).matrixTransform(toSvg)
    const [best] = drawn.toSorted((a, b) => Math.abs(a.cx - px) - Math.abs(b.cx - px))
    return best?.point ?? null
  }
  const hold = (point: WhatIfPoint | null) => {
    setHeld(point)
    showGhost(point === null || point.isNow ? null : ghostOf(point))
  }
  const press = (event: KeyboardEvent) => {
    const by = STEPS[event.key]
    const home = event.key === 'Home' ? points[0] : event.key === 'End' ? points.at(-1) : undefined
    const next = home ?? (by === undefined ? undefined : points[at + by])
    if (by === undefined && home === undefined) return
    event.preventDefault()
    if (next !== undefined) onTake(next)
  }
  const slider =
    measure.id !== 'massG' || now === undefined
      ? { 'aria-hidden': true as const }
      : {
          role: 'slider',
          tabIndex: 0,
          'aria-label': name,
          'aria-valuemin': 1,
          'aria-valuemax': points.length,
          'aria-valuenow': at + 1,
          'aria-valuetext': `${wordsOf(now)}, ${showMass(now.worth.massG)}`,
          onKeyDown: press,
        }
  const shown = held ?? now
  return (
    <g>
      <text className="curve-name" x={box.left} y={box.top - 8}>
        {name}
      </text>
      {y.ticks(4).map((value) => (
        <g key={value} className="chart-tick">
          <line x1={box.left} x2={right} y1={y(value)} y2={y(value)} />
          {hasAxis ? (
            <text x={box.left - 6} y={y(value)} textAnchor="end" dominantBaseline="middle">
              {measure.tick(value)}
            </text>
          ) : null}
        </g>
      ))}
      {limitG === null ? null : (
        <path className="curve-limit" d={`M${box.left} ${y(limitG)}H${right}`} />
      )}
      {carbonG === null ? null : (
        <path className="curve-carbon" d={`M${box.left} ${y(carbonG)}H${right}`} />
      )}
      {isCurve && drawn.length > 1 ? (
        <path className="curve-line" d={`M${drawn.map(({ cx, cy }) => `${cx} ${cy}`).join('L')}`} />
      ) : null}
      <g
        className="curve-hand"
        {...slider}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId)
          hold(nearest(event))
        }}
        onPointerMove={(event) => {
          if (held !== null) hold(nearest(event))
        }}
        onPointerUp={() => {
          if (held !== null) onTake(held)
          hold(null)
        }}
        onPointerCancel={() => {
          hold(null)
        }}
      >
        <rect
          x={box.left}
          y={box.top}
          width={Math.max(0, right - box.left)}
          height={box.bottom - box.top}
          fill="transparent"
        />
        {drawn.map(({ point, value, cx, cy }) => {
          const isFilled = point === shown
          return (
            <circle
              key={wordsOf(point)}
              className={isFilled ? 'curve-now' : 'curve-point'}
              cx={cx}
              cy={cy}
              r={isFilled ? 4.5 : 3}
            >
              <title>{`${wordsOf(point)}: ${measure.words(value)}`}</title>
            </circle>
          )
        })}
      </g>
      <text className="chart-number" x={box.left} y={box.bottom + 18}>
        {shown === undefined ? '' : wordsOf(shown)}
      </text>
    </g>
  )
}
