/**
 * Which projects this tab has. A project belongs to one tab at a time; the others may look at it,
 * or take it over. This is only so that people are told in time: storage itself refuses a change
 * made on an older revision.
 */
export interface Claims {
  /** Whether this tab has the project now; takes it if no other tab has it. */
  hold(id: string): Promise<boolean>
  /** Lets go of every project but this one. */
  keepOnly(id: string): void
  /**
   * Takes the project from the other tab, after that has written what it had not yet, or when it
   * does not answer.
   */
  takeOver(id: string): Promise<void>
  isElsewhere(id: string): Promise<boolean>
  /** Whether no other tab has this page open. */
  isAlone(): Promise<boolean>
  /** Called when another tab takes a project; that tab waits for the answer, but not for ever. */
  onTaken(listener: (id: string) => Promise<void>): void
  close(): void
}

/**
 * Where no other tab can be heard of (plain http, tests): storage still refuses a change made on an
 * older revision.
 */
export function createSoleClaims(): Claims {
  return {
    hold: () => Promise.resolve(true),
    keepOnly: () => undefined,
    takeOver: () => Promise.resolve(),
    isElsewhere: () => Promise.resolve(false),
    isAlone: () => Promise.resolve(true),
    onTaken: () => undefined,
    close: () => undefined,
  }
}
