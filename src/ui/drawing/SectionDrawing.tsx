import '../styles/section.css'
import { useMemo } from 'react'
import type { PartSection, SectionRegion } from '../../core/census/section/types.ts'
import { placeLeaders } from '../../core/drawing/placeLeaders.ts'
import { Hatch } from './Hatch.tsx'
import { hatchGapPx, LEAST_GAP_PX } from './hatchGap.ts'

/** What a region is called on the drawing, and a figure below it. */
export interface RegionWords {
  readonly name: string
  readonly figure: string
}

interface SectionDrawingProps {
  readonly section: PartSection
  readonly widthPx: number
  readonly mostHighPx: number
  /** 0–100 of the rooms, and of each zone's. */
  readonly infillPct: number
  readonly zonePcts: readonly number[]
  readonly layerMm: number
  readonly lineMm: number
  readonly wordsOf: (region: SectionRegion) => RegionWords | null
  readonly label: string
}

/** Left and right of the cut, for names; above and below, air. px */
const SIDE_PX = 76
const AIR_PX = 18
/** Two names below each other fit beside the flattest cut. px */
const LEAST_HIGH_PX = 96

type Box = readonly [left: number, top: number, right: number, bottom: number]

/**
 * A part cut by a plane: outline of the cut face, wall lines, skins, rooms, supports, each in its
 * own hatch and named.
 */
export function SectionDrawing(props: SectionDrawingProps) {
  const { section, widthPx, mostHighPx, infillPct, zonePcts, layerMm, lineMm, wordsOf } = props
  const { frame } = section
  const wide = Math.max(frame.right - frame.left, 1e-6)
  const high = Math.max(frame.top - frame.bottom, 1e-6)
  const scale = Math.min((widthPx - 2 * SIDE_PX) / wide, (mostHighPx - 2 * AIR_PX) / high)
  const heightPx = Math.round(Math.max(LEAST_HIGH_PX, scale * high + 2 * AIR_PX))
  const [midX, midY] = [(frame.left + frame.right) / 2, (frame.bottom + frame.top) / 2]
  const drawn = useMemo(() => {
    const boxOf = (boxes: Float64Array, i: number): Box => [
      widthPx / 2 + scale * ((boxes[i] ?? 0) - midX),
      heightPx / 2 - scale * ((boxes[i + 3] ?? 0) - midY),
      widthPx / 2 + scale * ((boxes[i + 1] ?? 0) - midX),
      heightPx / 2 - scale * ((boxes[i + 2] ?? 0) - midY),
    ]
    return section.regions.map((region) => {
      const boxes: Box[] = []
      for (let i = 0; i < region.boxes.length; i += 4) boxes.push(boxOf(region.boxes, i))
      return { region, boxes, path: boxes.map(pathOf).join('') }
    })
  }, [section, widthPx, heightPx, scale, midX, midY])

  const whole: Box = [
    widthPx / 2 - (scale * wide) / 2,
    heightPx / 2 - (scale * high) / 2,
    widthPx / 2 + (scale * wide) / 2,
    heightPx / 2 + (scale * high) / 2,
  ]
  const gapOf = (pct: number): number => hatchGapPx(scale, lineMm, pct)
  const named = drawn.flatMap(({ region, boxes }) => {
    const words = wordsOf(region)
    return words === null || boxes.length === 0 ? [] : [{ region, boxes, words }]
  })
  const leaders = placeLeaders(
    named.map(({ region, boxes }) => ({
      item: keyOf(region),
      anchors: sideAnchors(boxes, widthPx / 2),
    })),
    { left: 4, right: widthPx - 4, top: 14, bottom: heightPx - 18, gapPx: 30, widePx: 60 },
  )
  return (
    <svg
      className="section-drawing"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-label={[
        props.label,
        ...new Set(named.map(({ words }) => `${words.name} ${words.figure}`.trim())),
      ].join(' ')}
    >
      {drawn.map(({ region, path }) => {
        const key = keyOf(region)
        if (region.kind === 'cut')
          return (
            <g key={key}>
              <path className="cut-edge" d={path} />
              <path className="cut-ground" d={path} />
            </g>
          )
        if (region.kind === 'wall') return <path key={key} className="cut-wall" d={path} />
        const pct = region.kind === 'zone' ? (zonePcts[region.zone] ?? infillPct) : infillPct
        if (region.kind !== 'skin' && region.kind !== 'support' && pct === 0) return null
        const [gapPx, angleDeg] = {
          skin: [Math.max(2.5, scale * layerMm), 0],
          support: [LEAST_GAP_PX * 1.5, 90],
          room: [gapOf(pct), 45],
          zone: [gapOf(pct), 135],
        }[region.kind] as [number, number]
        return (
          <g key={key}>
            {region.kind === 'skin' ? <path className="cut-skin" d={path} /> : null}
            <Hatch
              path={path}
              box={whole}
              gapPx={gapPx}
              angleDeg={angleDeg}
              className={`cut-hatch cut-hatch-${region.kind}`}
            />
          </g>
        )
      })}
      {named.map(({ region, words }) => {
        const leader = leaders.find(({ item }) => item === keyOf(region))
        if (leader === undefined) return null
        const { number, knee, anchor, side } = leader
        const isLeft = side === 'left'
        return (
          <g key={keyOf(region)} className="leader">
            <polyline
              points={`${isLeft ? number.x + WORDS_PX : number.x - WORDS_PX},${knee.y} ${anchor.x},${anchor.y}`}
            />
            <circle cx={anchor.x} cy={anchor.y} r="2.1" />
            <text
              className="cut-words"
              x={number.x}
              y={number.y}
              textAnchor={isLeft ? 'start' : 'end'}
            >
              {words.name}
              <tspan className="cut-figure" x={number.x} dy="13">
                {words.figure}
              </tspan>
            </text>
          </g>
        )
      })}
    </svg>
  )
}

const WORDS_PX = 54

const keyOf = ({ kind, zone }: SectionRegion): string => `${kind} ${zone}`

const pathOf = ([left, top, right, bottom]: Box): string =>
  `M${hundredth(left)} ${hundredth(top)}H${hundredth(right)}V${hundredth(bottom)}H${hundredth(left)}Z`

const hundredth = (value: number): number => Math.round(value * 100) / 100

/**
 * In the largest box on either side of the middle; never above or below, where there is no room for
 * words.
 */
function sideAnchors(boxes: readonly Box[], middle: number) {
  const areaOf = ([left, top, right, bottom]: Box): number => (right - left) * (bottom - top)
  const best = (list: readonly Box[]) => {
    const [left, top, right, bottom] = list.reduce((a, b) => (areaOf(b) > areaOf(a) ? b : a))
    return { x: (left + right) / 2, y: (top + bottom) / 2, crossed: 0 }
  }
  const leftOnes = boxes.filter(([left, , right]) => left + right <= 2 * middle)
  const rightOnes = boxes.filter(([left, , right]) => left + right > 2 * middle)
  const left = best(leftOnes.length > 0 ? leftOnes : boxes)
  const right = best(rightOnes.length > 0 ? rightOnes : boxes)
  const nowhere = { ...left, crossed: 1000 }
  return { left, right, top: nowhere, bottom: nowhere }
}
