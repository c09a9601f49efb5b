import type { Spool } from '../../core/model/spools.ts'

/** An empty shelf, always the same. */
export const NO_SPOOLS: readonly Spool[] = []
