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
}
