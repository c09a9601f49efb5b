import '../styles/drawing.css'
import { useCallback, useEffect, useMemo, useRef, useState, type ReactNode } from 'react'
import type { FrameSign } from '../../core/aircraft/report/frameSigns.ts'
import { placeLeaders } from '../../core/drawing/placeLeaders.ts'
import type { LineDrawing } from '../../core/drawing/types.ts'
import { pieceKey, type PlacedPieces } from '../../core/joints/placePieces.ts'
import { VIEWS } from '../../core/drawing/viewAxes.ts'
import { ledgerRows } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { useWidth } from '../fields/useWidth.ts'
import { ItemNumbers, NumberWords, type NumberedItem } from './ItemNumbers.tsx'
import { SaveDrawing } from './SaveDrawing.tsx'
import { ScaleBar } from './ScaleBar.tsx'
import { FrameSignButtons, FrameSigns } from './FrameSigns.tsx'
import { placeSigns } from './placeSigns.ts'
import { LeaderLine, LitFaces, LitLines } from './LitPiece.tsx'
import { BoughtPiece, PieceLines } from './PieceLines.tsx'
import { useJoinable } from '../useJoinable.ts'
import { useFramePlaces } from '../useFramePlaces.ts'
import { useDrawing } from './useDrawing.ts'
import { useSight } from './useSight.ts'
import type { LaidPiece, LooseRow } from '../../state/store/types.ts'
import { formatAddress } from '../set/address.ts'
import { faultOf } from './faultOf.ts'
import { INKS, inkDepths, inkWords, type InkId } from './inks.ts'

const VIEW_NAMES = { slant: 'Slant', top: 'Top', front: 'Front', side: 'Side' } as const
export interface AssemblyProps {
  /** The id of what says the same in words. */
  readonly twinId: string
  readonly chosenId: string | null
  /** A part or its number is pointed at; null when no longer. */
  readonly onLight: (partId: string | null) => void
  /** A part or its number was pressed. */
  readonly onChoose: (partId: string) => void
  /** These in place of what stands, and nothing loose. */
  readonly laid?: readonly LaidPiece[]
  /** Pieces that are not there, in dashed lines. */
  readonly ghosts?: readonly LaidPiece[]
  /** What is drawn upon all of it. */
  readonly overlay?: (drawing: LineDrawing) => ReactNode
  /** What runs into what, marked where it is; nothing while all is drawn apart. */
  readonly signs?: readonly FrameSign[]
}

/** The frame as an assembly drawing: parts in lines, numbered as in the list. */
export function Assembly(props: AssemblyProps) {
  const { twinId, chosenId, onLight, onChoose, laid, ghosts, overlay, signs } = props
  const parts = useAppState((state) => state.frame.parts)
  const placed = useFramePlaces()
  const rows = useAppState(ledgerRows)
  const place = useRef<HTMLDivElement>(null)
  const width = useWidth(place, 800)
  const [apart, setApart] = useState(0)
  const [ink, setInk] = useState<InkId>('light')
  // What lies under the pointer, and lay there when it went down: a captured pointer has left
  // everything else.
  const pointedAt = useRef<string | null>(null)
  const pressed = useRef<string | null>(null)
  const { view, setView, near, isMoving, lieRef, svgRef, hands } = useSight(
    () => {
      pressed.current = pointedAt.current
    },
    () => {
      if (pressed.current !== null) onChoose(pressed.current)
    },
  )
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
      withBought: true,
      ...(laid === undefined ? {} : { laid }),
      ...(ghosts === undefined ? {} : { ghosts }),
      ...(near === null ? {} : { scale: near.fitScale * near.zoom, middleMm: near.middleMm }),
    }),
    [view, widthPx, heightPx, marginPx, apart, isMoving, near, laid, ghosts],
  )
  const { drawing, left, loose, ghost, bought } = useDrawing(wanted, parts, placed)

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
  const placedSigns = useMemo(
    () =>
      drawing === null || isMoving || apart > 0 || signs === undefined
        ? []
        : placeSigns(signs, drawing),
    [drawing, isMoving, apart, signs],
  )
  const hidden = items.filter(
    ({ id }) => drawing?.items.some(({ item, areaPx2 }) => item === id && areaPx2 === 0) === true,
  )
  const unplaced = items.filter(({ id }) => loose?.items.includes(id) === true)
  const joinable = useJoinable()
  const boughtHere = joinable
    .filter(({ id }) => bought?.items.some(({ item }) => item === id) === true)
    .map(({ label, name }) => (isNarrow ? name : `${label} ${name}`))
    .join(', ')
  const hanging =
    laid !== undefined
      ? ''
      : joinable
          .filter(
            ({ id, body, quantity }) => body !== undefined && standsLess(placed, id, quantity),
          )
          .map(({ label, name }) => `${label} ${name}`)
          .join(', ')
  const missing = items.filter(({ id }) => left.includes(id))

  useEffect(() => {
    lieRef.current = drawing
  }, [lieRef, drawing])

  const lightPiece = useCallback(
    (partId: string | null) => {
      pointedAt.current = partId
      onLight(partId)
    },
    [onLight],
  )
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
          ref={svgRef}
          role="slider"
          aria-details={twinId}
          tabIndex={0}
          aria-valuemin={0}
          aria-valuemax={360}
          aria-valuenow={Math.round(((view.azimuthDeg % 360) + 360) % 360)}
          aria-valuetext={`turned ${Math.round(view.azimuthDeg)}°, ${Math.round(view.elevationDeg)}° from above`}
          aria-label={
            'Assembly drawing of the frame; arrow keys turn it, with Shift they shift it, plus and minus bring it ' +
            'nearer. The numbers beside it open their parts.'
          }
          width={widthPx}
          height={heightPx}
          viewBox={`0 0 ${drawing?.widthPx ?? widthPx} ${drawing?.heightPx ?? heightPx}`}
          {...hands}
        >
          {loose === null || isMoving || unplaced.length === items.length ? null : (
            <LooseLabel boxPx={loose.boxPx} />
          )}
          {drawing?.items.map((item) => (
            <LitFaces
              key={item.item}
              item={item}
              depth={depths.get(item.item) ?? null}
              isChosen={item.item === chosenId}
              onHover={lightPiece}
            />
          ))}
          {drawing?.items.map((item) => (
            <LitLines key={item.item} item={item} isChosen={item.item === chosenId} />
          ))}
          {[...leaders.values()].map((leader) => (
            <LeaderLine
              key={leader.item}
              leader={leader}
              isChosen={leader.item === chosenId}
              isFaulty={items.some(({ id, fault }) => id === leader.item && fault !== null)}
              isNarrow={isNarrow}
            />
          ))}
          {drawing === null ? null : (
            <ScaleBar
              pxPerMm={drawing.scale}
              widthPx={drawing.widthPx}
              xPx={8}
              yPx={drawing.heightPx - 8}
            />
          )}
          {bought?.items.map((item) => (
            <BoughtPiece
              key={item.item}
              item={item}
              letter={
                isMoving || isNarrow
                  ? undefined
                  : joinable.find(({ id }) => id === item.item)?.label
              }
            />
          ))}
          {ghost?.items.map((item) => (
            <g key={item.item} className="ghost">
              <PieceLines item={item} isLit />
            </g>
          ))}
          {drawing === null || isMoving ? null : overlay?.(drawing)}
          <FrameSigns signs={placedSigns} isNarrow={isNarrow} />
          <NumberWords items={items} leaders={leaders} chosenId={chosenId} showsWords={!isNarrow} />
        </svg>
        <ItemNumbers
          items={items}
          leaders={leaders}
          chosenId={chosenId}
          onHover={onLight}
          onChoose={onChoose}
        />
        <FrameSignButtons signs={placedSigns} />
      </div>
      <p className="hint assembly-hint">
        Drag it to turn it, with Shift to shift it. Shift and the wheel, or + and −, bring it
        nearer; a double click fits it.
      </p>
      <p className="hint" role="status">
        {drawing === null ? 'Being drawn…' : ''}
        {hidden.length > 0
          ? ` Hidden here: ${hidden.map(({ number, name }) => `${number} ${name}`).join(', ')}.`
          : ''}
        {unplaced.length > 0 ? (
          <UnplacedWords items={unplaced} isAll={unplaced.length === items.length} />
        ) : null}
        {boughtHere === '' ? '' : ` In phantom lines, bought: ${boughtHere}.`}
        {hanging === '' ? '' : ` Bought and not placed yet: ${hanging}.`}
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

/** Whether fewer pieces of it stand than fly. */
function standsLess({ motions }: PlacedPieces, partId: string, quantity: number): boolean {
  return Array.from({ length: quantity }, (_, piece) => pieceKey({ partId, piece })).some(
    (key) => !motions.has(key),
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
