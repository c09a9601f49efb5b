/** A spool on the builder's shelf. */
export interface Spool {
  readonly id: string
  readonly materialId: string
  /** As it stands on the scale, reel and all, g. */
  readonly grossG: number
  /** The empty reel, g. */
  readonly emptyG: number
}
