import { useId, useRef } from 'react'
import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { formatMoney } from '../../../core/words/format.ts'
import type { BreakReport } from '../../../core/aircraft/report/types.ts'
import { spentAfter, type BreakCosts } from '../../../core/aircraft/season/breakEven.ts'
import { SaveDrawing } from '../../drawing/SaveDrawing.tsx'
import { useChartWidth } from '../../fields/useChartWidth.ts'
import { SideBySide } from './SideBySide.tsx'

interface BreakChartProps {
  readonly breaks: BreakReport
  readonly frame: 'bought' | 'cut' | null
  readonly currency: string
}

const HEIGHT = 220
const EDGE = { left: 44, right: 96, top: 24, bottom: 36 }
/** As wide as the page of a phone; drawn anew once the real width is known. */
const FIRST_WIDTH = 360
const LEAST_SHOWN = 10
const MOST_SHOWN = 60

/**
 * Money after so many broken pieces: where the two lines cross, the other frame would have been
 * cheaper.
 */
export function BreakChart({ breaks, frame, currency }: BreakChartProps) {
  const place = useRef<HTMLElement>(null)
  const twinId = useId()
  const width = useChartWidth(place, FIRST_WIDTH)
  const { printed, carbon, name, carbonCheaperFrom, printedCheaperFrom } = breaks
  const crossing =
    carbonCheaperFrom !== null && carbonCheaperFrom > 0
      ? carbonCheaperFrom
      : printedCheaperFrom !== null && printedCheaperFrom > 0
        ? printedCheaperFrom
        : null
  const most = Math.min(MOST_SHOWN, Math.max(LEAST_SHOWN, Math.ceil((crossing ?? 0) * 1.5)))
  const end = Math.max(spentAfter(printed, most), spentAfter(carbon, most))
  const x = scaleLinear([0, most], [EDGE.left, width - EDGE.right])
  const y = scaleLinear([0, end], [HEIGHT - EDGE.bottom, EDGE.top]).nice(4)
  const draw = (costs: typeof printed) =>
    line<number>()
      .x((k) => x(k))
      .y((k) => y(spentAfter(costs, k)))([0, most]) ?? ''
  const gap = y(spentAfter(printed, most)) - y(spentAfter(carbon, most))
  const nudge = Math.abs(gap) < 16 ? (gap >= 0 ? 9 : -9) : 0
  const carbonName = frame === 'bought' ? 'bought carbon' : 'cut plate'
  const counts = x.ticks(Math.min(most, width < 480 ? 5 : 10)).filter(Number.isInteger)
  const shown = crossing !== null && crossing <= most ? crossing : null
  return (
    <figure ref={place} className="craft-figure-block chart">
      <figcaption>
        Money spent after so many broken pieces of “{name}”<b> {words(breaks, carbonName)}</b>
        <SaveDrawing of={place} name="breaks" />
      </figcaption>
      <svg
        viewBox={`0 0 ${width} ${HEIGHT}`}
        role="img"
        aria-label={`Money against broken pieces: ${words(breaks, carbonName)}`}
        aria-details={twinId}
      >
        {y.ticks(4).map((value) => (
          <g key={value} className="chart-tick">
            <line x1={EDGE.left} x2={width - EDGE.right} y1={y(value)} y2={y(value)} />
            <text x={EDGE.left - 8} y={y(value)} textAnchor="end" dominantBaseline="middle">
              {value}
            </text>
          </g>
        ))}
        {counts.map((value) => (
          <text
            key={value}
            className="chart-number"
            x={x(value)}
            y={HEIGHT - EDGE.bottom + 16}
            textAnchor="middle"
          >
            {value}
          </text>
        ))}
        <text className="chart-number" x={width - EDGE.right} y={HEIGHT - 3} textAnchor="end">
          pieces broken
        </text>
        <text className="chart-number" x={EDGE.left - 8} y={9} textAnchor="end">
          {currency}
        </text>
        {shown === null ? null : (
          <line
            className="chart-cross"
            x1={x(shown)}
            x2={x(shown)}
            y1={EDGE.top}
            y2={HEIGHT - EDGE.bottom}
          />
        )}
        <path className="chart-carbon" d={draw(carbon)} />
        <path className="chart-printed" d={draw(printed)} />
        <text
          className="chart-name-printed"
          x={width - EDGE.right + 8}
          y={y(spentAfter(printed, most)) + nudge}
          dominantBaseline="middle"
        >
          printed
        </text>
        <text
          className="chart-name"
          x={width - EDGE.right + 8}
          y={y(spentAfter(carbon, most)) - nudge}
          dominantBaseline="middle"
        >
          {carbonName}
        </text>
      </svg>
      <details id={twinId} className="picture-twin">
        <summary>The same as a table</summary>
        <SideBySide
          caption={`Money spent after so many broken pieces of ${name}`}
          columns={[
            { name: 'Printed', side: printed },
            { name: frame === 'bought' ? 'Bought carbon' : 'Cut plate', side: carbon },
          ]}
          rows={counts.map((count) => [
            `${count} broken`,
            (costs: BreakCosts) => formatMoney(spentAfter(costs, count), currency),
          ])}
        />
      </details>
      <p className="hint">
        A printed piece costs {formatMoney(printed.perBreak, currency)},{' '}
        {frame === 'bought' ? 'a bought carbon one' : 'one cut from plate'}{' '}
        {formatMoney(carbon.perBreak, currency)}
        {breaks.cutPiece === null
          ? '.'
          : ', the price typed below: with a bought frame its spares are bought too. ' +
            `Cut from plate it would be ${formatMoney(breaks.cutPiece, currency)}, ` +
            'as the table below has it.'}
      </p>
    </figure>
  )
}

function words(breaks: BreakReport, carbonName: string): string {
  const { printedCheaperFrom, carbonCheaperFrom } = breaks
  if (carbonCheaperFrom !== null && carbonCheaperFrom > 0) {
    return `${carbonName} is cheaper from ${carbonCheaperFrom} broken on`
  }
  if (printedCheaperFrom !== null && printedCheaperFrom > 0) {
    return `printed is cheaper from ${printedCheaperFrom} broken on`
  }
  return printedCheaperFrom === 0 ? 'printed stays cheaper' : `${carbonName} stays cheaper`
}
