import type { Census } from '../../core/model/census.ts'
import { layerFindings } from '../../core/figures/layerFindings.ts'
import type { Finding } from '../../core/model/mesh.ts'
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

/** Whether layers are still being counted, for the first time or again. */
export function isCounting(work: PartWork): boolean {
  return work.kind !== 'failed' && (work.kind !== 'done' || work.newerFraction !== null)
}

interface Known {
  readonly census: Census | null
  readonly findings: readonly Finding[]
}

/**
 * By what the mesh alone told, so that a row gets the same list while its count goes on and is not
 * drawn again.
 */
const known = new WeakMap<readonly Finding[], Known>()

/**
 * What was found about the mesh, heaviest first; more is known of gaps once the layers are counted.
 */
export function findingsOf(work: PartWork): readonly Finding[] {
  const measured = readOf(work)?.measure.findings
  if (measured === undefined) return NONE
  const census = censusOf(work)
  const before = known.get(measured)
  if (before?.census === census) return before.findings
  const findings = layerFindings(measured, census, 'en')
  known.set(measured, { census, findings })
  return findings
}

const NONE: readonly Finding[] = []
