import { useRef } from 'react'
import type { SectionAxis } from '../../core/census/section/types.ts'
import type { Bounds } from '../../core/model/mesh.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import { SaveDrawing } from '../drawing/SaveDrawing.tsx'
import { useWidth } from '../fields/useWidth.ts'
import { cutStepMm, longAxis, moveCutPlane, useCutPlane } from './cutPlane.ts'
import { inLayer, lensLayer } from './lensLayer.ts'
import { SectionPicture } from './SectionPicture.tsx'
import { planeWords } from './sectionWords.ts'
import { useLaidAs } from './useLaidAs.ts'
import { useSection } from './useSection.ts'

/** By the part's longer side on the bed. */
const AXES: Readonly<
  Record<'x' | 'y', readonly { readonly id: SectionAxis; readonly words: string }[]>
> = {
  x: [
    { id: 'x', words: 'Across' },
    { id: 'y', words: 'Along' },
    { id: 'z', words: 'One layer' },
  ],
  y: [
    { id: 'y', words: 'Across' },
    { id: 'x', words: 'Along' },
    { id: 'z', words: 'One layer' },
  ],
}

interface SectionBlockProps {
  readonly row: LedgerRow
  readonly boundsMm: Bounds
}

/** The section A–A: the part cut where the slider says. */
export function SectionBlock({ row, boundsMm }: SectionBlockProps) {
  const { part } = row
  const place = useRef<HTMLDivElement>(null)
  const width = useWidth(place, 400)
  const plane = useCutPlane(part, boundsMm)
  const section = useSection(part, plane)
  const shown = section?.axis === plane.axis ? section : null
  const lens = plane.axis === 'z' ? lensLayer(part, boundsMm, plane) : null
  const laidAs = useLaidAs(row, lens?.layer ?? null)
  const steps = lens?.layers ?? shown?.reachMm ?? 1
  const step = lens === null ? cutStepMm(plane.axis, steps, part.recipe.layerMm) : 1
  return (
    <section className="section-block" aria-label="Section A–A">
      <div className="section-tools">
        <h3>A–A</h3>
        <span role="group" aria-label="Cut">
          {AXES[longAxis(part, boundsMm)].map(({ id, words }) => (
            <button
              key={id}
              type="button"
              className="assembly-view"
              aria-pressed={plane.axis === id}
              onClick={() => {
                moveCutPlane(part.id, inLayer(part, boundsMm, { axis: id, share: 0.5 }))
              }}
            >
              {words}
            </button>
          ))}
        </span>
        <SaveDrawing of={place} name={`${part.name} section`} />
      </div>
      <div ref={place}>
        <SectionPicture part={part} section={section} laidAs={laidAs} widthPx={Math.round(width)} />
      </div>
      <label className="section-slider">
        <span className="unseen">Where it is cut</span>
        <input
          type="range"
          min={lens === null ? 0 : 1}
          max={steps}
          step={step}
          disabled={shown === null}
          value={lens === null ? plane.share * steps : lens.layer + 1}
          aria-valuetext={shown === null ? 'being cut' : planeWords(shown)}
          onChange={(event) => {
            const value = Number(event.currentTarget.value)
            const upright = { axis: plane.axis, share: value / steps }
            moveCutPlane(part.id, lens?.planeAt(value - 1) ?? upright)
          }}
        />
        <output>{shown === null ? 'being cut…' : planeWords(shown)}</output>
      </label>
    </section>
  )
}
