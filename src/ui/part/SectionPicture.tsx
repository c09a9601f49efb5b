import type { PartSection } from '../../core/census/section/types.ts'
import type { Part } from '../../core/model/frame.ts'
import { SectionDrawing } from '../drawing/SectionDrawing.tsx'
import type { LaidShare } from './laidShares.ts'
import { regionWords, sectionSentence } from './sectionWords.ts'

interface SectionPictureProps {
  readonly part: Part
  /** Null until it was cut. */
  readonly section: PartSection | null
  /** For the grams beside the names; empty until there are figures. */
  readonly laidAs: readonly LaidShare[]
  readonly widthPx: number
}

const MOST_HIGH_PX = 300

/** A cut with its names and grams, and the same in a sentence below. */
export function SectionPicture({ part, section, laidAs, widthPx }: SectionPictureProps) {
  if (section === null) return <p className="hint">The part is being cut…</p>
  const { recipe, zones } = part
  const zonePcts = zones.map(({ infillPct }) => infillPct)
  const sentence = sectionSentence(section)
  return (
    <>
      <SectionDrawing
        section={section}
        widthPx={widthPx}
        mostHighPx={MOST_HIGH_PX}
        infillPct={recipe.infillPct}
        zonePcts={zonePcts}
        layerMm={recipe.layerMm}
        lineMm={recipe.lineMm}
        wordsOf={(region) => regionWords(region, laidAs, recipe.infillPct, zonePcts)}
        label={`${part.name}, section A–A. ${sentence}`}
      />
      <p className="hint">
        {sentence} Wall lines, skins and rooms lie where the layers have them; infill is hatched as
        dense as it is, not line for line.
      </p>
    </>
  )
}
