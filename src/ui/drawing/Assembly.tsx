import '../styles/drawing.css'
import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { placeLeaders } from '../../core/drawing/placeLeaders.ts'
import type { View } from '../../core/drawing/types.ts'
import { VIEWS } from '../../core/drawing/viewAxes.ts'
import { ledgerRows } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { useWidth } from '../fields/useWidth.ts'
import { ItemNumbers, NumberWords, type NumberedItem } from './ItemNumbers.tsx'
import { SaveDrawing } from './SaveDrawing.tsx'
import { PieceFaces, PieceLines } from './PieceLines.tsx'
import { useFramePlaces } from '../useFramePlaces.ts'
import { useDrawing } from './useDrawing.ts'
import type { LooseRow } from '../../state/store/types.ts'
import { formatAddress } from '../set/address.ts'
import { faultOf } from './faultOf.ts'
import { INKS, inkDepths, inkWords, type InkId } from './inks.ts'
import { shownAs } from '../../core/words/shownUnits.ts'
import { formatNumber } from '../../core/words/format.ts'

const VIEW_NAMES = { slant: 'Slant', top: 'Top', front: 'Front', side: 'Side' } as const
/** Turned a degree a px. */
const TURN_DEG = 0.5
const KEY_TURN_DEG = 5
/** A hand that presses moves so far without meaning to, px. */
const STILL_PX = 4
/** Times the size that fits. */
const MOST_ZOOM = 8

interface AssemblyProps {
  /** The part pointed at, here or in the list. */
  readonly litId: string | null
  readonly chosenId: string | null
  readonly onLight: (partId: string | null) => void
  /** A part or its number was pressed. */
  readonly onChoose: (partId: string) => void
}

/** The frame as an assembly drawing: parts in lines, numbered as in the list. */
export function Assembly({ litId, chosenId, onLight, onChoose }: AssemblyProps) {
  const parts = useAppState((state) => state.frame.parts)
  const { places } = useFramePlaces()
  const rows = useAppState(ledgerRows)
  const place = useRef<HTMLDivElement>(null)
  const width = useWidth(place, 800)
  const [view, setView] = useState<View>(VIEWS.slant)
  const [apart, setApart] = useState(0)
  const [zoom, setZoom] = useState(1)
  const [fitScale, setFitScale] = useState<number | null>(null)
  const [ink, setInk] = useState<InkId>('light')
  const turnedPx = useRef(0)
  // What lies under the pointer, and lay there when it went down: a captured pointer has left everything else.
  const pointedAt = useRef<string | null>(null)
  const pressed = useRef<string | null>(null)
  const [isMoving, setMoving] = useState(false)
  const isNarrow = width < 560
  const widthPx = Math.round(width)
  const heightPx = Math.round(Math.min(720, Math.max(300, 0.8 * width)))
  const marginPx = isNarrow ? 44 : 76

  const wanted = useMemo(
    () => ({
      view,
      widthPx,
      heightPx,
      marginPx,
      apart,
      isMoving,
      ...(zoom === 1 || fitScale === null ? {} : { scale: fitScale * zoom }),
    }),
    [view, widthPx, heightPx, marginPx, apart, isMoving, zoom, fitScale],
  )
  const { drawing, left, loose } = useDrawing(wanted, parts, places)

  const items = useMemo(
    () =>
      rows.map((row, i): NumberedItem => {
        const { id, name } = row.part
        return { id, name, number: i + 1, words: inkWords(ink, row), fault: faultOf(row.work) }
      }),
    [rows, ink],
  )
  const depths = useMemo(() => inkDepths(ink, rows), [ink, rows])
  const leaders = useMemo(() => {
    if (drawing === null || isMoving) return new Map()
    const room = {
      left: isNarrow ? 16 : 36,
      right: drawing.widthPx - (isNarrow ? 16 : 36),
      top: 26,
      bottom: drawing.heightPx - 26,
      gapPx: isNarrow ? 34 : 44,
      widePx: isNarrow ? 40 : 70,
    }
    const asks = drawing.items.flatMap(({ item, anchors }) =>
      anchors === null ? [] : [{ item, anchors }],
    )
    return new Map(placeLeaders(asks, room).map((leader) => [leader.item, leader]))
  }, [drawing, isMoving, isNarrow])
  const hidden = items.filter(
    ({ id }) => drawing?.items.some(({ item, areaPx2 }) => item === id && areaPx2 === 0) === true,
  )
  const unplaced = items.filter(({ id }) => loose?.items.includes(id) === true)
  const missing = items.filter(({ id }) => left.includes(id))

  const svg = useRef<SVGSVGElement>(null)
  const scaleNow = drawing?.scale ?? null
  useEffect(() => {
    // By hand: a listener of React's may not keep the page from scrolling.
    const element = svg.current
    if (element === null) return
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.shiftKey && document.activeElement !== element) return
      event.preventDefault()
      if (zoom === 1) setFitScale(scaleNow)
      // With Shift held many browsers make a level wheel of it.
      const way = event.deltaY === 0 ? event.deltaX : event.deltaY
      setZoom(Math.min(MOST_ZOOM, Math.max(1, zoom * Math.exp(-way / 400))))
    }
    element.addEventListener('wheel', onWheel, { passive: false })
    return () => {
      element.removeEventListener('wheel', onWheel)
    }
  }, [zoom, scaleNow])

  const pointAt = useCallback(
    (partId: string | null) => {
      pointedAt.current = partId
      onLight(partId)
    },
    [onLight],
  )
  const turn = (rightDeg: number, downDeg: number) => {
    setView((now) => ({
      azimuthDeg: now.azimuthDeg + rightDeg,
      elevationDeg: Math.max(-90, Math.min(90, now.elevationDeg + downDeg)),
    }))
  }
  const as = shownAs('mm')
  return (
    <div className="assembly">
      <div className="assembly-tools" role="group" aria-label="View">
        {Object.entries(VIEW_NAMES).map(([id, name]) => {
          const own = VIEWS[id as keyof typeof VIEWS]
          return (
            <button
              key={id}
              type="button"
              className="assembly-view"
              aria-pressed={
                own.azimuthDeg === view.azimuthDeg && own.elevationDeg === view.elevationDeg
              }
              onClick={() => {
                setView(own)
              }}
            >
              {name}
            </button>
          )
        })}
        <label className="assembly-ink">
          toned by{' '}
          <select
            value={ink}
            onChange={(event) => {
              setInk(event.currentTarget.value as InkId)
            }}
          >
            {INKS.map(({ id, words }) => (
              <option key={id} value={id}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <label className="assembly-apart">
          assembled
          <input
            type="range"
            min="0"
            max="100"
            step="5"
            value={Math.round(100 * apart)}
            aria-valuetext={`${Math.round(100 * apart)} % apart`}
            onChange={(event) => {
              setApart(Number(event.currentTarget.value) / 100)
            }}
          />
          apart
        </label>
        <SaveDrawing of={place} name="assembly" />
      </div>
      <div className="assembly-sheet" ref={place}>
        <svg
          ref={svg}
          role="slider"
          tabIndex={0}
          aria-valuemin={0}
          aria-valuemax={360}
          aria-valuenow={Math.round(((view.azimuthDeg % 360) + 360) % 360)}
          aria-valuetext={`turned ${Math.round(view.azimuthDeg)}°, ${Math.round(view.elevationDeg)}° from above`}
          aria-label={
            'Assembly drawing of the frame; arrow keys turn it, plus and minus bring it nearer. ' +
            'The numbers beside it open their parts.'
          }
          width={widthPx}
          height={heightPx}
          viewBox={`0 0 ${drawing?.widthPx ?? widthPx} ${drawing?.heightPx ?? heightPx}`}
          onKeyDown={(event) => {
            if (event.key === '+' || event.key === '-') {
              if (zoom === 1) setFitScale(scaleNow)
              setZoom(Math.min(MOST_ZOOM, Math.max(1, zoom * (event.key === '+' ? 1.25 : 0.8))))
            }
            const step = {
              ArrowLeft: [-1, 0],
              ArrowRight: [1, 0],
              ArrowUp: [0, -1],
              ArrowDown: [0, 1],
            }[event.key]
            if (step === undefined) return
            event.preventDefault()
            turn(KEY_TURN_DEG * (step[0] ?? 0), KEY_TURN_DEG * (step[1] ?? 0))
          }}
          onDoubleClick={() => {
            setZoom(1)
          }}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId)
            turnedPx.current = 0
            pressed.current = pointedAt.current
            setMoving(true)
          }}
          onPointerMove={(event) => {
            if (!isMoving) return
            turnedPx.current += Math.abs(event.movementX) + Math.abs(event.movementY)
            turn(-TURN_DEG * event.movementX, TURN_DEG * event.movementY)
          }}
          onPointerUp={() => {
            setMoving(false)
            // A press that turned nothing is meant for the part below it.
            if (turnedPx.current <= STILL_PX && pressed.current !== null) onChoose(pressed.current)
          }}
          onPointerCancel={() => {
            setMoving(false)
          }}
        >
          {loose === null || isMoving || unplaced.length === items.length ? null : (
            <LooseLabel boxPx={loose.boxPx} />
          )}
          {drawing?.items.map((item) => (
            <PieceFaces
              key={item.item}
              item={item}
              depth={depths.get(item.item) ?? null}
              isLit={item.item === litId || item.item === chosenId}
              onHover={pointAt}
            />
          ))}
          {drawing?.items.map((item) => (
            <PieceLines
              key={item.item}
              item={item}
              isLit={item.item === litId || item.item === chosenId}
            />
          ))}
          {[...leaders.values()].map(({ item, number, knee, anchor, side }) => {
            const isFaulty = items.some(({ id, fault }) => id === item && fault !== null)
            const start =
              side === 'top' ? number.y + 14 : side === 'bottom' ? number.y - 12 : number.y
            const points =
              side === 'top' || side === 'bottom'
                ? `${number.x},${start} ${anchor.x},${anchor.y}`
                : `${side === 'left' ? number.x + 12 : number.x - 12},${knee.y} ${knee.x},${knee.y} ` +
                  `${anchor.x},${anchor.y}`
            return (
              <g
                key={item}
                className={
                  item === litId || item === chosenId
                    ? 'leader leader-lit'
                    : isFaulty
                      ? 'leader leader-amber'
                      : 'leader'
                }
              >
                <polyline points={points} />
                <circle cx={anchor.x} cy={anchor.y} r="2.1" />
                {isFaulty ? (
                  <circle className="mark-ring" cx={anchor.x} cy={anchor.y} r="8" />
                ) : null}
              </g>
            )
          })}
          <NumberWords
            items={items}
            leaders={leaders}
            litIds={[litId, chosenId]}
            showsWords={!isNarrow}
          />
        </svg>
        <ItemNumbers
          items={items}
          leaders={leaders}
          litId={litId}
          chosenId={chosenId}
          onHover={onLight}
          onChoose={onChoose}
        />
      </div>
      <p className="hint assembly-hint">
        Drag it to turn it. Shift and the wheel, or + and −, bring it nearer; a double click fits
        it.
      </p>
      <p className="hint" role="status">
        {drawing === null
          ? 'Being drawn…'
          : `1 ${as.label} is ${formatNumber(drawing.scale * as.per)} px on this screen.`}
        {hidden.length > 0
          ? ` Hidden here: ${hidden.map(({ number, name }) => `${number} ${name}`).join(', ')}.`
          : ''}
        {unplaced.length > 0 ? (
          <UnplacedWords items={unplaced} isAll={unplaced.length === items.length} />
        ) : null}
        {missing.length > 0
          ? ` Without a mesh: ${missing.map(({ number, name }) => `${number} ${name}`).join(', ')}.`
          : ''}
      </p>
    </div>
  )
}

/** What is written over the row of parts that nobody gave a place. */
function LooseLabel({ boxPx: [left, top, right] }: Pick<LooseRow, 'boxPx'>) {
  return (
    <g className="loose-label">
      <path d={`M${left} ${top - 6}H${Math.max(right, left + 90)}`} />
      <text x={left} y={top - 11}>
        not placed yet
      </text>
    </g>
  )
}

interface UnplacedWordsProps {
  readonly items: readonly NumberedItem[]
  readonly isAll: boolean
}

function UnplacedWords({ items, isAll }: UnplacedWordsProps) {
  const names = items.map(({ number, name }) => `${number} ${name}`).join(', ')
  return (
    <>
      {' '}
      {isAll ? 'No part has a place yet; they lie side by side. ' : `Not placed yet: ${names}. `}
      <a href={formatAddress('aircraft')}>Say where they sit</a>.
    </>
  )
}
