import '../styles/section.css'
import { useMemo } from 'react'
import type { PartSection, SectionRegion } from '../../core/census/section/types.ts'
import { onSheet } from '../../core/drawing/onSheet.ts'
import type { LineDrawing } from '../../core/drawing/types.ts'
import { Hatch } from './Hatch.tsx'
import { hatchGapPx } from './hatchGap.ts'

/** One layer of a part, with what decides how dense its hatches are. */
export interface Lens {
  readonly section: PartSection
  readonly infillPct: number
  readonly zonePcts: readonly number[]
  readonly lineMm: number
}

interface LensDrawingProps {
  readonly lens: Lens
  readonly drawing: LineDrawing
  /** Underside of the part, mm. */
  readonly bottomMm: number
}

/** A layer where it lies in the part: cut face, wall lines, skins, rooms, in the view's own slant. */
export function LensDrawing({ lens, drawing, bottomMm }: LensDrawingProps) {
  const { section, infillPct, zonePcts, lineMm } = lens
  const { scale, boxPx } = drawing
  const drawn = useMemo(() => {
    const zMm = bottomMm + section.atShare * section.reachMm
    const put = (x: number, y: number): string =>
      onSheet(drawing, [x, y, zMm]).map(hundredth).join(' ')
    return section.regions.map(({ kind, zone, boxes }) => {
      let path = ''
      for (let i = 0; i + 3 < boxes.length; i += 4) {
        const [left = 0, right = 0, bottom = 0, top = 0] = boxes.subarray(i, i + 4)
        path += `M${put(left, bottom)}L${put(right, bottom)}L${put(right, top)}L${put(left, top)}Z`
      }
      return { kind, zone, path }
    })
  }, [section, drawing, bottomMm])
  return (
    <g className="lens">
      {drawn.map(({ kind, zone, path }) => {
        const key = `${kind} ${zone}`
        if (kind === 'cut')
          return (
            <g key={key}>
              <path className="cut-edge" d={path} />
              <path className="cut-ground" d={path} />
            </g>
          )
        if (kind === 'wall') return <path key={key} className="cut-wall" d={path} />
        if (kind === 'skin') return <path key={key} className="cut-skin" d={path} />
        const pct = kind === 'zone' ? (zonePcts[zone] ?? infillPct) : infillPct
        return pct === 0 ? null : (
          <Hatch
            key={key}
            path={path}
            box={boxPx}
            gapPx={hatchGapPx(scale, lineMm, pct)}
            angleDeg={ANGLES[kind]}
            className={`cut-hatch cut-hatch-${kind}`}
          />
        )
      })}
    </g>
  )
}

const ANGLES: Readonly<Record<SectionRegion['kind'], number>> = {
  cut: 0,
  wall: 0,
  skin: 0,
  room: 45,
  zone: 135,
  support: 90,
}

const hundredth = (value: number): number => Math.round(value * 100) / 100
