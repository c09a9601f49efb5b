import '../styles/drawing.css'
import '../styles/section.css'
import { alongBox } from '../../core/mesh/boxOfMesh.ts'
import { onSheet } from '../../core/drawing/onSheet.ts'
import { placeLeaders, type Leader } from '../../core/drawing/placeLeaders.ts'
import { viewAxes } from '../../core/drawing/viewAxes.ts'
import type { Bounds, Vec3 } from '../../core/model/mesh.ts'
import type { LookAnswer } from '../../state/store/types.ts'
import type { CutPlane } from '../part/cutPlane.ts'
import type { PartMark } from '../part/partMarks.ts'
import { Hatch } from './Hatch.tsx'
import { PieceFaces, PieceLines } from './PieceLines.tsx'

interface PartDrawingProps {
  readonly look: LookAnswer
  readonly marks: readonly PartMark[]
  /** Drawn as chain line A–A; null for none. */
  readonly plane: CutPlane | null
  /** Sign of the mark that is pointed out. */
  readonly litSign: string | null
  readonly label: string
}

/** Below this a drawing has room for signs alone. px */
const ROOMY_PX = 520
/** Holes of further kinds stand in the list alone. */
const MOST_HOLES = { roomy: 8, narrow: 4 } as const

function nothing(): void {
  // One part: pointing at it tells nothing.
}

/**
 * One part in lines with what is worth showing on it: what was found, holes, zones, what hangs
 * over, how it is laid.
 */
export function PartDrawing({ look, marks, plane, litSign, label }: PartDrawingProps) {
  const { drawing, overhang, zones, holes, boundsMm } = look
  const { widthPx, heightPx, items, boxPx } = drawing
  const isRoomy = widthPx >= ROOMY_PX
  const mostHoles = isRoomy ? MOST_HOLES.roomy : MOST_HOLES.narrow
  const shown = marks.filter(({ kind, sign }) => kind !== 'hole' || Number(sign) <= mostHoles)
  const leaders = placeLeaders(
    shown.flatMap(({ sign, anchors }) => (anchors === null ? [] : [{ item: sign, anchors }])),
    {
      left: isRoomy ? 36 : 14,
      right: widthPx - (isRoomy ? 36 : 14),
      top: 20,
      bottom: heightPx - 26,
      gapPx: isRoomy ? 40 : 28,
      widePx: isRoomy ? 74 : 30,
    },
  )
  return (
    <svg
      className="part-drawing"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-label={label}
    >
      {items.map((item) => (
        <PieceFaces key={item.item} item={item} isLit={false} onHover={nothing} />
      ))}
      {marks.some(({ kind }) => kind === 'over') && overhang.path !== '' ? (
        <>
          <Hatch path={overhang.path} box={boxPx} gapPx={5} angleDeg={60} className="mark-over" />
          <path className="mark-over-edge" d={overhang.path} />
        </>
      ) : null}
      {items.map((item) => (
        <PieceLines key={item.item} item={item} isLit={false} />
      ))}
      <path className="mark-zone" d={zones.map(({ path }) => path).join('')} />
      {holes.flatMap(({ places }, i) =>
        places.map(({ x, y, isSeen }) =>
          isSeen ? (
            <circle key={`${i} ${x} ${y}`} className="mark-hole" cx={x} cy={y} r="3" />
          ) : null,
        ),
      )}
      {plane === null ? null : <PlaneLine look={look} plane={plane} boundsMm={boundsMm} />}
      <LayerTicks look={look} />
      {leaders.map((leader) => {
        const mark = shown.find(({ sign }) => sign === leader.item)
        return mark === undefined ? null : (
          <MarkLeader
            key={mark.sign}
            mark={mark}
            leader={leader}
            isLit={mark.sign === litSign}
            showsWords={isRoomy}
          />
        )
      })}
    </svg>
  )
}

interface MarkLeaderProps {
  readonly mark: PartMark
  readonly leader: Leader
  readonly isLit: boolean
  readonly showsWords: boolean
}

function MarkLeader({ mark, leader, isLit, showsWords }: MarkLeaderProps) {
  const { number, knee, anchor, side } = leader
  const isAmber = mark.kind === 'finding' || mark.kind === 'over'
  const isColumn = side === 'left' || side === 'right'
  const start = isColumn
    ? `${side === 'left' ? number.x + 12 : number.x - 12},${knee.y} ${knee.x},${knee.y}`
    : `${number.x},${side === 'top' ? number.y + (showsWords && mark.short !== '' ? 16 : 8) : number.y - 14}`
  const tone = isAmber ? ' leader-amber' : isLit ? ' leader-lit' : ''
  return (
    <g className={`leader${tone}`}>
      <polyline points={`${start} ${anchor.x},${anchor.y}`} />
      <circle cx={anchor.x} cy={anchor.y} r="2.1" />
      {mark.kind === 'finding' ? (
        <circle className="mark-ring" cx={anchor.x} cy={anchor.y} r={isLit ? 14 : 7} />
      ) : null}
      <g
        className={`item-words${isAmber ? ' item-words-amber' : ''}`}
        transform={`translate(${number.x} ${number.y})`}
      >
        <text y="6">{mark.sign}</text>
        {showsWords && mark.short !== '' ? (
          <text className="item-mass" y="20">
            {mark.short}
          </text>
        ) : null}
      </g>
    </g>
  )
}

interface PlaneLineProps {
  readonly look: LookAnswer
  readonly plane: CutPlane
  readonly boundsMm: Bounds
}

/** How far the cutting plane stands out, as a share of the part's largest side. */
const STANDS_OUT = 0.05

/** The cutting plane as a chain line round the part, an A at two corners. */
function PlaneLine({ look: { drawing }, plane: { axis, share }, boundsMm }: PlaneLineProps) {
  const { min, max } = boundsMm
  const out = STANDS_OUT * Math.max(...max.map((value, k) => value - (min[k] ?? 0)))
  const at = alongBox(boundsMm, axis, share)
  const [x0, y0, z0] = min.map((value) => value - out) as [number, number, number]
  const [x1, y1, z1] = max.map((value) => value + out) as [number, number, number]
  const corners: Readonly<Record<CutPlane['axis'], readonly Vec3[]>> = {
    x: [
      [at, y0, z0],
      [at, y1, z0],
      [at, y1, z1],
      [at, y0, z1],
    ],
    y: [
      [x0, at, z0],
      [x1, at, z0],
      [x1, at, z1],
      [x0, at, z1],
    ],
    z: [
      [x0, y0, at],
      [x1, y0, at],
      [x1, y1, at],
      [x0, y1, at],
    ],
  }
  const points = corners[axis].map((corner) => onSheet(drawing, corner))
  const [first, , third] = points
  const middle = [0, 1].map((k) => points.reduce((sum, point) => sum + (point[k] ?? 0), 0) / 4)
  return (
    <g>
      <path
        className="mark-plane"
        d={`M${points.map(([x, y]) => `${tenth(x)} ${tenth(y)}`).join('L')}Z`}
      />
      {[first, third].map((corner, i) => {
        if (corner === undefined) return null
        const [dx, dy] = [corner[0] - (middle[0] ?? 0), corner[1] - (middle[1] ?? 0)]
        const length = Math.hypot(dx, dy) || 1
        return (
          <text
            key={i === 0 ? 'first' : 'third'}
            className="mark-plane-letter"
            x={corner[0] + (10 * dx) / length}
            y={corner[1] + (10 * dy) / length}
          >
            A
          </text>
        )
      })}
    </g>
  )
}

/** How the layers lie: a small stack with the way they grow, or, seen from above, that they lie in the sheet. */
function LayerTicks({ look: { drawing } }: { readonly look: LookAnswer }) {
  const { heightPx, view } = drawing
  const upOnSheet = viewAxes(view).up[2]
  const [x, y] = [14, heightPx - 12]
  if (upOnSheet < 0.05)
    return (
      <g aria-hidden="true">
        <circle className="mark-layers" cx={x + 6} cy={y - 14} r="6" />
        <circle className="mark-layers" cx={x + 6} cy={y - 14} r="1" />
        <text className="mark-layers-words" x={x + 18} y={y - 10}>
          layers lie in the sheet
        </text>
      </g>
    )
  const ticks = [0, 1, 2, 3, 4].map((i) => `M${x} ${y - 5 * i}h16`).join('')
  const tip = y - 5 * 4 - 10
  return (
    <g aria-hidden="true">
      <path className="mark-layers" d={`${ticks}M${x + 8} ${y}V${tip}m-3 5l3 -5l3 5`} />
      <text className="mark-layers-words" x={x + 22} y={y - 6}>
        layers
      </text>
    </g>
  )
}

const tenth = (value: number): number => Math.round(value * 10) / 10
