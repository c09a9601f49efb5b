import '../styles/drawing.css'
import '../styles/section.css'
import { cutOutline, type CutOutline } from '../../core/drawing/cutOutline.ts'
import type { Leader } from '../../core/drawing/placeLeaders.ts'
import { viewAxes } from '../../core/drawing/viewAxes.ts'
import type { LookAnswer } from '../../state/store/types.ts'
import type { CutPlane } from '../part/cutPlane.ts'
import { MARK_LIST, type PartMark } from '../part/partMarks.ts'
import { DimensionLines } from './DimensionLines.tsx'
import { Hatch } from './Hatch.tsx'
import { LensDrawing, type Lens } from './LensDrawing.tsx'
import { PieceFaces, PieceLines } from './PieceLines.tsx'
import type { PlacedMarks } from './placeMarks.ts'

interface PartDrawingProps {
  readonly look: LookAnswer
  readonly marks: readonly PartMark[]
  readonly placed: PlacedMarks
  /** Drawn as chain line A–A; null for none. */
  readonly plane: CutPlane | null
  /** A layer to look into the part at; null for none. */
  readonly lens: Lens | null
  /** Sign of the mark that is pointed out. */
  readonly litSign: string | null
  readonly label: string
}

function nothing(): void {
  // One part: pointing at it tells nothing.
}

/**
 * One part in lines with what is worth showing on it: what was found, holes, zones, what hangs
 * over, how it is laid.
 */
export function PartDrawing(props: PartDrawingProps) {
  const { look, marks, placed, plane, lens, litSign, label } = props
  const { drawing, overhang, zones, holes, boundsMm } = look
  const { widthPx, heightPx, items, boxPx } = drawing
  const { sizes, leaders, isRoomy } = placed
  const cut = plane === null ? null : cutOutline(drawing, boundsMm, plane.axis, plane.share)
  return (
    <svg
      className="part-drawing"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-label={label}
      aria-details={marks.length === 0 ? undefined : MARK_LIST}
    >
      <g className={lens === null ? undefined : 'lens-body'}>
        {items.map((item) => (
          <PieceFaces key={item.item} item={item} isLit={false} onHover={nothing} />
        ))}
      </g>
      {lens === null ? null : (
        <LensDrawing lens={lens} drawing={drawing} bottomMm={boundsMm.min[2]} />
      )}
      {marks.some(({ kind }) => kind === 'over') && overhang.path !== '' ? (
        <>
          <Hatch path={overhang.path} box={boxPx} gapPx={5} angleDeg={60} className="mark-over" />
          <path className="mark-over-edge" d={overhang.path} />
        </>
      ) : null}
      <g className={lens === null ? undefined : 'lens-body'}>
        {items.map((item) => (
          <PieceLines key={item.item} item={item} isLit={false} />
        ))}
      </g>
      <path className="mark-zone" d={zones.map(({ path }) => path).join('')} />
      {holes.flatMap(({ places }, i) =>
        places.map(({ x, y, isSeen }) =>
          isSeen ? (
            <circle key={`${i} ${x} ${y}`} className="mark-hole" cx={x} cy={y} r="3" />
          ) : null,
        ),
      )}
      <DimensionLines of={sizes} />
      {cut === null ? null : <PlaneLine of={cut} />}
      <LayerTicks look={look} />
      {leaders.map((leader) => (
        <MarkLeader
          key={leader.mark.sign}
          mark={leader.mark}
          leader={leader}
          isLit={leader.mark.sign === litSign}
          showsWords={isRoomy}
        />
      ))}
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

/** The cutting plane as a chain line round the part, an A at two corners. */
function PlaneLine({ of: { corners, letters } }: { readonly of: CutOutline }) {
  return (
    <g>
      <path
        className="mark-plane"
        d={`M${corners.map(({ x, y }) => `${tenth(x)} ${tenth(y)}`).join('L')}Z`}
      />
      {letters.map(({ x, y }, i) => (
        <text key={i === 0 ? 'first' : 'third'} className="mark-plane-letter" x={x} y={y}>
          A
        </text>
      ))}
    </g>
  )
}

/**
 * How the layers lie: a small stack with the way they grow, or, seen from above, that they lie in
 * the sheet.
 */
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
