import { lazy, Suspense, useMemo, useRef, useState, type ComponentProps } from 'react'
import { PART_VIEWS } from '../../core/drawing/partViews.ts'
import type { Part } from '../../core/model/frame.ts'
import type { Bounds, Finding } from '../../core/model/mesh.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import type { PartRead } from '../../state/store/types.ts'
import { CutHandle } from '../drawing/CutHandle.tsx'
import { PartDrawing } from '../drawing/PartDrawing.tsx'
import { placeMarks } from '../drawing/placeMarks.ts'
import { SaveDrawing } from '../drawing/SaveDrawing.tsx'
import { SignButtons } from '../drawing/SignButtons.tsx'
import { useWidth } from '../fields/useWidth.ts'
import { findingsOf } from '../ledger/partWork.ts'
import { longAxis, moveCutPlane, useCutPlane, type CutPlane } from './cutPlane.ts'
import { goToRemedy } from './goToRemedy.ts'
import { LayerLens } from './LayerLens.tsx'
import { inLayer, lensLayer, lensOf } from './lensLayer.ts'
import { MarkList } from './MarkList.tsx'
import { findingSign, partMarks, sizeWords } from './partMarks.ts'
import type { Ringed } from './PartView.tsx'
import { usePartLook } from './usePartLook.ts'
import { useSection } from './useSection.ts'

const PartView = lazy(async () => ({ default: (await import('./PartView.tsx')).PartView }))

const VIEW_NAMES = {
  slant: 'Slant',
  top: 'Top',
  front: 'Front',
  side: 'Side',
  below: 'From below',
} as const
type ViewId = keyof typeof VIEW_NAMES

/** How a part was looked at last, for every part of this visit. */
let lastView: ViewId = 'slant'
let wasSolid = false

interface PartPictureProps {
  readonly row: LedgerRow
  readonly read: PartRead
  /** The finding pointed out last. */
  readonly ringed: (Ringed & { readonly finding: Finding }) | null
}

/** The part large: drawn in lines with its marks, or turned by hand in 3D. */
export function PartPicture({ row, read, ringed }: PartPictureProps) {
  const { part } = row
  const findings = findingsOf(row.work)
  const place = useRef<HTMLDivElement>(null)
  const width = Math.round(useWidth(place, 760))
  const [viewId, setViewId] = useState(lastView)
  const [isSolid, setSolid] = useState(wasSolid)
  const { boundsMm } = read.measure
  const plane = useCutPlane(part, boundsMm)
  const lens = plane.axis === 'z' ? lensLayer(part, boundsMm, plane) : null
  const heightPx = Math.round(Math.min(460, Math.max(250, 0.56 * width)))
  const look = usePartLook(part, findings, PART_VIEWS[viewId], width, heightPx)
  const marks = useMemo(
    () => (look === null ? [] : partMarks(look, part, findings)),
    [look, part, findings],
  )
  return (
    <>
      <div className="part-tools">
        <span role="group" aria-label="Point of view">
          {Object.entries(VIEW_NAMES).map(([id, words]) => (
            <button
              key={id}
              type="button"
              className="assembly-view"
              aria-pressed={!isSolid && id === viewId}
              onClick={() => {
                lastView = id as ViewId
                wasSolid = false
                setViewId(lastView)
                setSolid(false)
              }}
            >
              {words}
            </button>
          ))}
          <button
            type="button"
            className="assembly-view"
            aria-pressed={isSolid}
            onClick={() => {
              wasSolid = true
              setSolid(true)
            }}
          >
            In 3D
          </button>
          <button
            type="button"
            className="assembly-view"
            aria-pressed={lens !== null && !isSolid}
            onClick={() => {
              const isOn = lens !== null && !isSolid
              const axis = isOn ? longAxis(part, boundsMm) : 'z'
              if (isOn || lens === null)
                moveCutPlane(part.id, inLayer(part, boundsMm, { axis, share: 0.5 }))
              wasSolid = false
              setSolid(false)
            }}
          >
            Layer lens
          </button>
        </span>
        {isSolid ? null : <SaveDrawing of={place} name={part.name} />}
      </div>
      <div ref={place} className="part-picture">
        {isSolid ? (
          <Suspense fallback={<p className="hint">The 3D view is on its way.</p>}>
            <PartView part={part} picture={read.thumbnail} ringed={ringed} />
          </Suspense>
        ) : look === null ? (
          <p className="hint" style={{ minHeight: `${heightPx}px` }}>
            Being drawn…
          </p>
        ) : (
          <DrawnPart
            look={look}
            marks={marks}
            part={part}
            plane={plane}
            boundsMm={boundsMm}
            litSign={ringed === null ? null : findingSign(findings, ringed.finding)}
            label={
              `${part.name}, as it lies on the bed, ${VIEW_NAMES[viewId].toLowerCase()} view, ` +
              `${sizeWords(look.boundsMm)} over all. Its layers lie level. The marks are listed below.`
            }
          />
        )}
      </div>
      {lens === null || isSolid ? null : <LayerLens row={row} lens={lens} />}
      <MarkList marks={marks} part={part} />
    </>
  )
}

type DrawnPartProps = Omit<ComponentProps<typeof PartDrawing>, 'placed' | 'plane' | 'lens'> & {
  readonly part: Part
  readonly plane: CutPlane
  /** As it is drawn, mm. */
  readonly boundsMm: Bounds
}

/** The drawing with what is pressed and dragged on it. */
function DrawnPart({ part, boundsMm, ...drawn }: DrawnPartProps) {
  const { look, marks, plane } = drawn
  const placed = useMemo(() => placeMarks(look, marks), [look, marks])
  const { widthPx, heightPx } = look.drawing
  const section = useSection(part, plane)
  return (
    <div className="drawn-part">
      <PartDrawing {...drawn} placed={placed} lens={lensOf(part, plane, section)} />
      <CutHandle
        look={look}
        plane={plane}
        layerMm={part.recipe.layerMm}
        onMove={(moved) => {
          moveCutPlane(part.id, inLayer(part, boundsMm, moved))
        }}
      />
      <SignButtons of={placed} widthPx={widthPx} heightPx={heightPx} onGo={goToRemedy} />
    </div>
  )
}
