import { useMemo, useRef } from 'react'
import type { StrictestLimit } from '../../core/frame/types.ts'
import type { Range } from '../../core/model/figures.ts'
import { formatGrams, formatNumber } from '../../core/words/format.ts'
import { useWidth } from '../fields/useWidth.ts'
import { showMass } from '../show.ts'
import { useGhost } from './ghost.ts'
import { placeLabels, type RulerLabel } from './placeLabels.ts'
import { GRAMS_AT_REST, OUNCES_AT_REST, rulerWindow } from './rulerWindow.ts'
import { shownOf, shownAs } from '../../core/words/shownUnits.ts'

interface GramRulerProps {
  readonly massG: Range
  readonly carbonG: number | null
  /** The limit that binds, in grams of printed parts; null for none. */
  readonly limit?: StrictestLimit | null
}

/** From this many px a gram on every tenth of a numbered step has a tick, else every fifth. */
const FINE_PX = 8
/** Height of names and marks above the scale, and of the scale's own ticks, px. */
const TOP_PX = 34
const TICK_PX = 10
/** Room for the 0 and the sign that the scale is broken after it, px. */
const BREAK_PX = 26

/** A ruler so short has room for the limit's figure with one word. px */
const SHORT_PX = 320

/** Which limit it is, where there is room to say so. */
function limitName(limit: StrictestLimit | null, widthPx: number): string {
  if (widthPx < SHORT_PX) return 'limit'
  return limit?.kind === 'printed' ? 'printed limit' : 'all-up limit'
}

/**
 * The printed mass on a scale of grams or ounces: a tick with a flag at the middle, a band for the
 * range, the limit through the scale with a hatch beyond it, the carbon frame dotted, and dashed
 * where the change under hand would move it.
 */
export function GramRuler({ massG, carbonG, limit = null }: GramRulerProps) {
  const place = useRef<HTMLDivElement>(null)
  const widthPx = Math.round(useWidth(place, 900))
  const ghost = useGhost()
  // An all-up limit that what is bought uses up leaves nothing on this scale: its end.
  const limitG = limit === null ? null : Math.max(0, limit.printedG)
  const isOver = limit !== null && limit.leftG < 0
  const as = shownAs('g')
  const { lowG, highG, majorG } = useMemo(() => {
    const marks = [massG.low, massG.high, carbonG, limitG]
    const shown = marks.filter((mark) => mark !== null).map((mark) => mark / as.per)
    const { low, high, major } = rulerWindow(shown, as.per === 1 ? GRAMS_AT_REST : OUNCES_AT_REST)
    return { lowG: low * as.per, highG: high * as.per, majorG: major * as.per }
  }, [massG.low, massG.high, carbonG, limitG, as.per])
  const broken = lowG > 0
  const leftPx = broken ? BREAK_PX : 0
  const scale = (g: number) => leftPx + ((g - lowG) / (highG - lowG)) * (widthPx - leftPx)
  const minorG = majorG / (scale(majorG) - scale(0) >= 10 * FINE_PX ? 10 : 5)
  const ticks = Array.from({ length: Math.round((highG - lowG) / minorG) + 1 }, (_, i) => ({
    g: lowG + i * minorG,
    isMajor: i % Math.round(majorG / minorG) === 0,
    isHalf: (2 * i) % Math.round(majorG / minorG) === 0,
  }))
  // A change looked at moves no scale: beyond its ends it is marked at the end.
  const ghostX = ghost === null ? 0 : Math.min(widthPx - 1, Math.max(leftPx, scale(ghost.massG)))
  const labels: RulerLabel[] = []
  if (limitG !== null)
    labels.push({
      id: 'limit',
      words: `${limitName(limit, widthPx)} ${formatGrams(limitG, undefined, 1)}`,
      xPx: scale(limitG),
      side: 'right',
    })
  if (carbonG !== null)
    labels.push({
      id: 'carbon',
      words: `carbon ${showMass(carbonG)}`,
      xPx: scale(carbonG),
      side: 'left',
    })
  if (ghost !== null)
    labels.push({
      id: 'ghost',
      words: `${ghost.words} ${showMass(ghost.massG)}`,
      xPx: ghostX,
      side: ghost.massG < massG.mid ? 'left' : 'right',
    })
  const base = TOP_PX + TICK_PX
  return (
    <div className="ruler" aria-hidden="true" ref={place}>
      <svg width={widthPx} height={base + 16} viewBox={`0 0 ${widthPx} ${base + 16}`}>
        <defs>
          <pattern id="beyond" width="5" height="5" patternUnits="userSpaceOnUse">
            <path className="ruler-hatch" d="M-1 6 6 -1" />
          </pattern>
        </defs>
        <rect
          className="ruler-band"
          x={scale(massG.low)}
          y={TOP_PX - 14}
          width={Math.max(1, scale(massG.high) - scale(massG.low))}
          height={14 + TICK_PX}
        />
        {limitG === null ? null : (
          <rect
            x={scale(limitG)}
            y={base - 5}
            width={Math.max(0, widthPx - scale(limitG))}
            height="5"
            fill="url(#beyond)"
          />
        )}
        <path
          className="ruler-line"
          d={broken ? `M0 ${base}h9l3 -6 5 10 3 -4H${widthPx}` : `M0 ${base}H${widthPx}`}
        />
        {ticks.map(({ g, isMajor, isHalf }) => (
          <line
            key={g}
            className="ruler-tick"
            x1={scale(g)}
            x2={scale(g)}
            y1={base - (isMajor ? TICK_PX : isHalf ? 7 : 4)}
            y2={base}
          />
        ))}
        {broken ? (
          <text className="ruler-number ruler-zero" x="0" y={base + 13}>
            0
          </text>
        ) : null}
        {ticks
          .filter(({ isMajor }) => isMajor)
          .map(({ g }, i, all) => (
            <text
              key={g}
              className="ruler-number"
              x={i === all.length - 1 ? widthPx : scale(g)}
              y={base + 13}
              textAnchor={i === all.length - 1 ? 'end' : i === 0 && !broken ? 'start' : 'middle'}
            >
              {formatNumber(shownOf(g, as), undefined, 2)}
              {i === all.length - 1 ? ` ${as.label}` : ''}
            </text>
          ))}
        {carbonG === null ? null : (
          <path className="ruler-carbon" d={`M${scale(carbonG)} ${TOP_PX - 14}V${base}`} />
        )}
        {limitG === null ? null : (
          <path className="ruler-limit" d={`M${scale(limitG)} ${TOP_PX - 20}V${base + 3}`} />
        )}
        {ghost === null ? null : (
          <path className="ruler-ghost" d={`M${ghostX} ${TOP_PX - 10}V${base}`} />
        )}
        {massG.high === 0 ? null : (
          <path
            className={isOver ? 'ruler-needle ruler-over' : 'ruler-needle'}
            d={`M${scale(massG.mid)} ${TOP_PX - 15}V${base}m-5 ${-(TICK_PX + 15)}h10l-5 7z`}
          />
        )}
        {placeLabels(labels, widthPx, massG.high === 0 ? [] : [scale(massG.mid)]).map(
          ({ id, words, xPx, side, line }) => (
            <text
              key={id}
              className={`ruler-word ruler-word-${id}`}
              x={side === 'left' ? xPx - 6 : xPx + 6}
              y={line === 0 ? TOP_PX - 1 : TOP_PX - 18}
              textAnchor={side === 'left' ? 'end' : 'start'}
            >
              {words}
            </text>
          ),
        )}
      </svg>
    </div>
  )
}
