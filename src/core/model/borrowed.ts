/**
 * Numbers in memory that whoever lends it fills again at its next call: to be read at once, or
 * copied with `slice`. An array of one's own may stand where a borrowed one is asked for, but not
 * the other way round, so that keeping a borrowed one does not compile.
 */
export interface Borrowed<T extends Float64Array | Int32Array> {
  readonly length: number
  readonly [at: number]: number
  slice(from?: number, to?: number): T
}

/** A list that is lent in the same way. */
export interface BorrowedList<T> extends Iterable<T> {
  readonly length: number
  readonly [at: number]: T
  slice(from?: number, to?: number): T[]
  find(test: (one: T) => boolean): T | undefined
}
