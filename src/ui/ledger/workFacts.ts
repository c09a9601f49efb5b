import type { Census } from '../../core/model/census.ts'
import type { PartRead, PartWork } from '../../state/store/types.ts'

/** What is known of the mesh so far. */
export function readOf(work: PartWork): PartRead | null {
  switch (work.kind) {
    case 'queued':
    case 'reading':
      return null
    case 'rough':
    case 'done':
    case 'failed':
      return work.read
  }
}

/** The counted layers, also older ones while newer are being counted. */
export function censusOf(work: PartWork): Census | null {
  return work.kind === 'done' ? work.census : null
}
