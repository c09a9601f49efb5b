/** A run on its printer. */
export interface PrinterTime {
  readonly printerId: string
  readonly timeS: number
}

/** How long a frame's runs take. */
export interface Finish {
  /** One after the other, s: the hours that printers run and that money counts. */
  readonly inTurnS: number
  /**
   * Until the last is done where all printers run at once, s; a new run starts as soon as one ends.
   */
  readonly sideBySideS: number
}

export function finishOf(runs: readonly PrinterTime[]): Finish {
  const busyS = new Map<string, number>()
  for (const { printerId, timeS } of runs) {
    busyS.set(printerId, (busyS.get(printerId) ?? 0) + timeS)
  }
  return {
    inTurnS: runs.reduce((sum, { timeS }) => sum + timeS, 0),
    sideBySideS: Math.max(0, ...busyS.values()),
  }
}
