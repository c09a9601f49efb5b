import { useRef } from 'react'
import type { SectionAxis } from '../../core/census/section/types.ts'
import type { Part } from '../../core/model/frame.ts'
import type { Bounds } from '../../core/model/mesh.ts'
import { SaveDrawing } from '../drawing/SaveDrawing.tsx'
import { useWidth } from '../fields/useWidth.ts'
import { cutStepMm, longAxis, moveCutPlane, useCutPlane } from './cutPlane.ts'
import type { LaidShare } from './laidShares.ts'
import { SectionPicture } from './SectionPicture.tsx'
import { planeWords } from './sectionWords.ts'
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
  readonly part: Part
  readonly boundsMm: Bounds
  /** For the grams beside the names; empty until there are figures. */
  readonly laidAs: readonly LaidShare[]
}

/** The section A–A: the part cut where the slider says. */
export function SectionBlock({ part, boundsMm, laidAs }: SectionBlockProps) {
  const place = useRef<HTMLDivElement>(null)
  const width = useWidth(place, 400)
  const plane = useCutPlane(part, boundsMm)
  const section = useSection(part, plane)
  const shown = section?.axis === plane.axis ? section : null
  const isLevel = plane.axis === 'z'
  const steps = shown === null ? 1 : isLevel ? shown.layers : shown.reachMm
  const step = isLevel ? 1 : cutStepMm(plane.axis, steps, part.recipe.layerMm)
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
                moveCutPlane(part.id, { axis: id, share: 0.5 })
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
          min={0}
          max={steps}
          step={step}
          disabled={shown === null}
          value={plane.share * steps}
          aria-valuetext={shown === null ? 'being cut' : planeWords(shown)}
          onChange={(event) => {
            const share = Number(event.currentTarget.value) / steps
            moveCutPlane(part.id, { axis: plane.axis, share })
          }}
        />
        <output>{shown === null ? 'being cut…' : planeWords(shown)}</output>
      </label>
    </section>
  )
}
