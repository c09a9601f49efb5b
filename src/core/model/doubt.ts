/**
 * One named error of a calculated figure. Figures that carry errors of one id move together: a
 * spool is dense for every part printed from it.
 */
export interface SharedError {
  readonly id: string
  readonly name: string
  /** What one standard deviation of it does, as a share of the figure; the sign tells which way. */
  readonly effect: number
  /**
   * Of an error that can be told away: one standard deviation that is the figure's own from then on,
   * as a share of it. None where not told.
   */
  readonly left?: number
}

/** How far a calculated or typed figure may be off. */
export interface FigureDoubt {
  /** No id twice. */
  readonly shared: readonly SharedError[]
  /** One standard deviation of what nothing else shares, as a share of the figure. */
  readonly own: number
  /** Share of the figure that it is sure to reach, whatever the errors say: none where not told. */
  readonly least?: number
}
