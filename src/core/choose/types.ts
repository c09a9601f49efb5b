import type { Census } from '../model/census.ts'
import type { PartWay } from '../model/frame.ts'
import type { Gives } from './gives/types.ts'

/** What is weighed up, of an option, of some parts or of the whole frame. */
export interface Worth {
  /** Of the pieces that fly, on the scale. */
  readonly massG: number
  /** Of all that is printed, spares too. */
  readonly timeS: number
  readonly cost: number
  /**
   * Over that of the part as it stands, 1 being as stiff; of several parts that of the one that
   * loses most. Infinity where nobody asks for it or nothing is known of it.
   */
  readonly stiffness: number
}

/** A way to print one part, with what it does to the frame. */
export interface Option extends Worth {
  readonly way: PartWay
  /** Its layers; null where the scale alone says what the part weighs. */
  readonly census: Census | null
  /** How one piece gives under its load; left out where no model tells it. */
  readonly gives?: Gives
}

/** A part's options; the first is the part as it stands. */
export interface PartOptions {
  readonly partId: string
  readonly options: readonly Option[]
}

/** At most, of the whole frame; left out, as much as one likes. */
export interface Ceilings {
  readonly massG?: number
  readonly timeS?: number
  readonly cost?: number
}

/** One whole assignment: an option for each part, in their order. */
export interface Assignment extends Worth {
  readonly options: readonly Option[]
}
