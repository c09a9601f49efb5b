import type { LoadNow } from '../../../core/aircraft/twin/loadOf.ts'
import type { Gives } from '../../../core/choose/gives/types.ts'
import type { NoBeam, PartSections } from '../../../core/stiffness/part/sections.ts'
import { showLength, showNumber } from '../../show.ts'

interface BeamLineProps {
  readonly own: PartSections | NoBeam | null
  readonly gives: Gives | null
  readonly load: LoadNow
  /** By one sum of its solid model. */
  readonly isScaled: boolean
}

/**
 * How the part gives as a beam of its own sections, while its settings move; or that it is none.
 */
export function BeamLine({ own, gives, load, isScaled }: BeamLineProps) {
  if (own?.kind === 'no') {
    return (
      <p className="hint beam-line">
        No beam tells how it gives: {own.why}. Its solid model does, below.
      </p>
    )
  }
  if (gives === null) return null
  return (
    <p className="beam-line" role="status">
      As a beam under {showNumber(load.loadN, 1)} N it gives <b>{giveWords(gives)}</b>
      {gives.firstHz === null ? '' : ` and rings first at `}
      {gives.firstHz === null ? null : <b>{toneWords(gives.firstHz)}</b>}
      <span className="quiet-text">
        {isScaled
          ? ', as its solid model does, give or take 25 % and 13 %.'
          : '. Held as in a vice: its solid model is being asked.'}
      </span>
    </p>
  )
}

export function giveWords({ deflectionMm }: Pick<Gives, 'deflectionMm'>): string {
  const digits = deflectionMm < 1 ? 3 : deflectionMm < 10 ? 2 : 1
  return showLength(deflectionMm, digits)
}

export function toneWords(hz: number): string {
  return `${showNumber(hz, hz < 100 ? 1 : 0)} Hz`
}
