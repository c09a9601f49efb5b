import type { Recipe } from '../../model/settings.ts'
import type { MetricSize, NutStandard, ScrewStandard } from './types.ts'

/** One thing the screw passes through, from the head on. */
export interface StackLayer {
  readonly name: string
  readonly thicknessMm: number
}

/** What of a recipe decides how an insert holds. */
export type InsertPrint = Pick<Recipe, 'walls' | 'lineMm' | 'infillPct'>

/** What the screw bites into. Boss and hole sizes are null where nobody measured them. */
export type StackEnd =
  | { readonly kind: 'nut'; readonly standard: NutStandard }
  | {
      readonly kind: 'insert'
      readonly insertMm: number
      readonly bossMm: number | null
      /** Depth of the hole the insert sits in; null for one that goes right through. */
      readonly holeDepthMm: number | null
      /** How the part it sits in is printed; left out where nobody said. */
      readonly print?: InsertPrint
    }
  | {
      readonly kind: 'plastic'
      readonly bossMm: number | null
      readonly holeDepthMm: number | null
    }
  /** Deepest the screw may go before it meets the windings, from the mounting face. */
  | { readonly kind: 'motor'; readonly depthMm: number }
  /** Deepest the screw may go before it meets the one from the post's other end. */
  | { readonly kind: 'post'; readonly depthMm: number }

export interface Stack {
  readonly standard: ScrewStandard
  readonly size: MetricSize
  readonly layers: readonly StackLayer[]
  /** All washers together. */
  readonly washers: number
  readonly end: StackEnd
  /** The screw at hand; null to be told which to take. */
  readonly lengthMm: number | null
}

export type StackWarningCode =
  | 'head-deeper-than-plate'
  | 'short-of-thread'
  | 'shank-too-long'
  | 'too-long'
  | 'boss-too-thin'
  | 'insert-in-open-infill'
  | 'hole-too-shallow'
  | 'nothing-stocked'

export interface StackWarning {
  readonly code: StackWarningCode
  /** One sentence with both numbers, and what to do. */
  readonly text: string
}

export interface StackAnswer {
  /** Layers and washers together: what the screw has to cross before it bites. mm */
  readonly gripMm: number
  /** Least and greatest screw length that does; greatest null where nothing limits it. mm */
  readonly leastMm: number
  readonly mostMm: number | null
  /** The screw at hand, else the shortest stocked one that fits; null when none does. mm */
  readonly lengthMm: number | null
  /** Thread in the nut, insert, plastic or motor; null without a length. mm */
  readonly engagementMm: number | null
  readonly warnings: readonly StackWarning[]
}
