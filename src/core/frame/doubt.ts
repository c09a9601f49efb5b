import type { Spread } from '../figures/spread.ts'

/** An error several masses have in common: one spool is dense for every part printed from it. */
export interface SharedError {
  readonly id: string
  readonly name: string
  /** Relative, as a range of about 95 %. */
  readonly spread: Spread
  /** What would pin it down, as an instruction; null while no such result can be typed in. */
  readonly measure: string | null
  /** What is left after that; as before where nothing can be measured. */
  readonly spreadMeasured: Spread
}

/** All pieces of one line of the ledger and how far their mass may be off. */
export interface UncertainMass {
  /** Of the ledger line. */
  readonly id: string
  readonly name: string
  readonly massG: number
  /** Its own error, relative, as a range of about 95 %. */
  readonly spread: Spread
  /** Shared errors that apply besides, by id. */
  readonly sharedIds: readonly string[]
  /** Weighing it leaves this and no shared error. Null when it is weighed already. */
  readonly spreadWeighed: Spread | null
}

export interface MassDoubt {
  readonly masses: readonly UncertainMass[]
  readonly shared: readonly SharedError[]
}
