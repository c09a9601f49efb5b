/** Everything that flies of one kind on one scale, and what it was reckoned to weigh then. */
export interface WholeWeighing {
  readonly id: string
  /** All printed pieces that fly, or all that flies. */
  readonly of: 'printed' | 'all-up'
  /** What the scale showed, tare and all. */
  readonly scaleG: number
  /** What was on the scale besides; 0 for nothing. */
  readonly tareG: number
  /** The smallest step the scale shows. */
  readonly stepG: number
  /** The day, ISO 8601; null where nobody said. */
  readonly date: string | null
  /** What was calculated for it then. */
  readonly calculatedG: number
  /** Its user stands by it, however odd it looks. */
  readonly trusted: boolean
}

/** How long a print took by the clock, from start to the last line. */
export interface ClockTime {
  readonly id: string
  /** What was on the bed: pieces by part id. */
  readonly pieces: Readonly<Record<string, number>>
  readonly timeS: number
  /** What was calculated for it then. */
  readonly calculatedS: number
  readonly date: string | null
  readonly trusted: boolean
  /**
   * Of a whole print run: `calculatedS` has its layers together. Left out, every piece is as
   * printed alone, less starts.
   */
  readonly beside?: true
  /** Of another printer than the frame's own; left out, that one. */
  readonly printerId?: string
}

/** What a printer's file lays for one piece of a part, and what was calculated for it then. */
export interface LaidReading {
  readonly id: string
  readonly partId: string
  readonly fileName: string
  /** In layers; priming and purge lines left out. */
  readonly depositMm3: number
  readonly calculatedMm3: number
  /** At the speeds it writes; both without the start. */
  readonly timeS: number
  readonly calculatedS: number
  /** The day, ISO 8601; null where nobody said. */
  readonly date: string | null
  /** Its user stands by it, however odd it looks. */
  readonly trusted: boolean
}
