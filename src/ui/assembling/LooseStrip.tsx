import type { KeyboardEvent, RefObject } from 'react'
import { STAY } from '../../core/mesh/rigidMaps.ts'
import { VIEWS } from '../../core/drawing/viewAxes.ts'
import { useMemo } from 'react'
import { useAppState } from '../appContext.ts'
import { MiniDrawing } from './MiniDrawing.tsx'
import type { LooseKind } from './pieces.ts'

interface LooseStripProps {
  readonly kinds: readonly LooseKind[]
  readonly chosen: LooseKind | null
  readonly onChoose: (kind: LooseKind) => void
  /** Enter on a piece asks for its offers. */
  readonly onAsk: () => void
  readonly strip: RefObject<HTMLDivElement | null>
}

const HIGH_PX = 78
const WIDE_PX = 108
/** Pieces keep one scale, but none is drawn smaller than it can be told by. px a mm */
const LEAST_SCALE = 0.08

/** What hangs in the air, at one scale. */
export function LooseStrip({ kinds, chosen, onChoose, onAsk, strip }: LooseStripProps) {
  const longestMm = useAppState(({ work }) =>
    Math.max(
      1,
      ...kinds.map(({ part }) => {
        const state = work[part.id]
        const bounds =
          state !== undefined && 'read' in state ? state.read?.measure.boundsMm : undefined
        if (bounds === undefined) return 1
        return Math.hypot(...bounds.max.map((high, k) => high - (bounds.min[k] ?? 0)))
      }),
    ),
  )
  const scale = Math.max(LEAST_SCALE, (HIGH_PX - 6) / longestMm)
  const walk = (event: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
    if (step === undefined || kinds.length === 0) return
    event.preventDefault()
    event.stopPropagation()
    const now = kinds.findIndex((kind) => kind === chosen)
    const next = kinds[(now + step + kinds.length) % kinds.length]
    if (next === undefined) return
    onChoose(next)
    const buttons = strip.current?.querySelectorAll<HTMLElement>('button[data-kind]') ?? []
    buttons[kinds.indexOf(next)]?.focus()
  }
  return (
    <div ref={strip} className="loose-strip" role="group" aria-label="Loose pieces">
      {kinds.map((kind) => (
        <button
          key={kind.key}
          type="button"
          data-kind={kind.key}
          className="loose-piece"
          aria-pressed={kind === chosen}
          tabIndex={kind === chosen || (chosen === null && kind === kinds[0]) ? 0 : -1}
          onKeyDown={(event) => {
            walk(event)
            if (event.key !== 'Enter' || kind !== chosen) return
            event.preventDefault()
            event.stopPropagation()
            onAsk()
          }}
          onClick={() => {
            onChoose(kind)
          }}
        >
          <Picture kind={kind} scale={scale} />
          <span className="loose-words">
            <span className="loose-number">{kind.part.label}</span> {kind.part.name}
            {kind.pieces.length > 1 ? ` × ${kind.pieces.length}` : ''}
            {kind.isMirrored ? ', mirrored' : ''}
          </span>
        </button>
      ))}
    </div>
  )
}

function Picture({ kind, scale }: { readonly kind: LooseKind; readonly scale: number }) {
  const { part, isMirrored } = kind
  const laid = useMemo(
    () => [{ partId: part.id, motion: isMirrored ? MIRRORED : STAY }],
    [part.id, isMirrored],
  )
  return (
    <MiniDrawing
      laid={laid}
      view={VIEWS.slant}
      widthPx={WIDE_PX}
      heightPx={HIGH_PX}
      scale={scale}
    />
  )
}

const MIRRORED = { ...STAY, matrix: [-1, 0, 0, 0, 1, 0, 0, 0, 1] } as typeof STAY
