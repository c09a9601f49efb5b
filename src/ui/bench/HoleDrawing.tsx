import { useCallback, useId, useRef, useState } from 'react'
import { PART_VIEWS } from '../../core/drawing/partViews.ts'
import type { Part } from '../../core/model/frame.ts'
import type { LookAnswer } from '../../state/store/types.ts'
import { useActions } from '../appContext.ts'
import { useAnswer } from '../drawing/useAnswer.ts'
import { PieceFaces, PieceLines } from '../drawing/PieceLines.tsx'
import { Choice } from '../fields/Choice.tsx'
import { useWidth } from '../fields/useWidth.ts'
import { lengthUnit } from '../../core/words/shownUnits.ts'
import { showMm } from '../show.ts'

const VIEWS = {
  top: 'from above',
  below: 'from below',
  front: 'from the front',
  side: 'from the side',
} as const
type ViewId = keyof typeof VIEWS

interface HoleDrawingProps {
  readonly partId: string
  /** Those that have holes. */
  readonly parts: readonly Part[]
  readonly onShow: (partId: string) => void
}

/** One part with the numbers of its holes, as the list has them. */
export function HoleDrawing({ partId, parts, onShow }: HoleDrawingProps) {
  const [viewId, setViewId] = useState<ViewId>('top')
  const place = useRef<HTMLDivElement>(null)
  const widthPx = Math.round(Math.min(720, useWidth(place, 600)))
  const part = parts.find(({ id }) => id === partId)
  const look = useHoles(part, viewId, widthPx)
  if (part === undefined) return null
  return (
    <div className="drill-drawing">
      <div className="run-fields">
        <Choice
          label="Part"
          options={parts.map(({ id, name }) => ({ id, name }))}
          value={partId}
          onChange={onShow}
        />
        <Choice
          label="Seen"
          options={(Object.keys(VIEWS) as ViewId[]).map((id) => ({ id, name: VIEWS[id] }))}
          value={viewId}
          onChange={setViewId}
        />
      </div>
      <div ref={place}>
        {look === null ? (
          <p className="hint">Being drawn…</p>
        ) : (
          <Numbered look={look} name={part.name} />
        )}
      </div>
    </div>
  )
}

function useHoles(part: Part | undefined, viewId: ViewId, widthPx: number): LookAnswer | null {
  const { lookAtPart } = useActions()
  const { id, meshHash, unit, pose, keepsHairs } = part ?? {}
  const ask = useCallback(() => {
    const sheet = { widthPx, heightPx: Math.round(0.55 * widthPx), marginPx: 30 }
    const wanted = { view: PART_VIEWS[viewId], sheet, pointsMm: [] }
    return id === undefined ? Promise.resolve(null) : lookAtPart(id, wanted)
    // The worker takes the part as it then is: another mesh or pose is another question.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [lookAtPart, id, viewId, widthPx, meshHash, unit, pose, keepsHairs])
  return useAnswer(ask)
}

function nothing(): void {
  // The list says what its holes are for.
}

/** How far a number stands from its hole's edge, and the least hole that has room for one. px */
const OFF_PX = 5
const ROOM_PX = 28
/** From the middle of a number to its foot. px */
const FOOT_PX = 4

function Numbered({ look, name }: { readonly look: LookAnswer; readonly name: string }) {
  const { drawing, holes } = look
  const twinId = useId()
  const [left, , , bottom] = drawing.boxPx
  const { widthPx, heightPx, items } = drawing
  const places = holes.flatMap(({ diameterMm, places: own }) =>
    own.map((place) => ({ ...place, widePx: diameterMm * drawing.scale })),
  )
  const hidden = places.filter(({ isSeen }) => !isSeen)
  return (
    <>
      <svg
        className="part-drawing"
        viewBox={`0 0 ${widthPx} ${heightPx}`}
        role="img"
        aria-label={`${name} with the numbers of its holes`}
        aria-details={twinId}
      >
        {items.map((item) => (
          <PieceFaces key={item.item} item={item} isLit={false} onHover={nothing} />
        ))}
        {items.map((item) => (
          <PieceLines key={item.item} item={item} isLit={false} />
        ))}
        {places.map(({ number, x, y, widePx, isSeen }) => {
          if (!isSeen) return null
          // In the hole, or right beside it: never upon its edge.
          const isInside = widePx >= ROOM_PX
          return (
            <g key={number}>
              {isInside ? null : <circle className="mark-hole" cx={x} cy={y} r="3" />}
              <text
                className={`bed-number drill-number${isInside ? ' drill-number-inside' : ''}`}
                x={isInside ? x : x + Math.max(3, widePx / 2) + OFF_PX}
                y={y + FOOT_PX}
              >
                {number}
              </text>
            </g>
          )
        })}
      </svg>
      <details id={twinId} className="picture-twin">
        <summary>Where the numbers are</summary>
        <p className="hint">
          From the left and from the lower edge as it is seen, {lengthUnit()}:{' '}
          {places
            .filter(({ isSeen }) => isSeen)
            .map(({ number, x, y }) => {
              const from = [x - left, bottom - y].map((px) => showMm(px / drawing.scale, 0))
              return `${number} at ${from.join(', ')}`
            })
            .join('; ')}
          . What each is for stands in the list below.
        </p>
      </details>
      {hidden.length === 0 ? null : (
        <p className="hint">Not seen from here: {hidden.map(({ number }) => number).join(', ')}.</p>
      )}
    </>
  )
}
