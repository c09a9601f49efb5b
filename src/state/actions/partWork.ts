import type { Census } from '../../core/model/census.ts'
import type { Problem } from '../../core/model/problem.ts'
import { unitToMm } from '../../core/model/units.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import type { AnalyseEvent, PartRead } from '../../jobs/asks/partAsks.ts'
import type { Rough } from '../../jobs/asks/fileAsks.ts'
import type { PartWork } from '../store/types.ts'

/*
 * How a part's work moves on, as functions from what was known to what is known.
 */

/** Volume and area in mm, from those in the file's own numbers. */
export function scaleRough(raw: Rough, unit: LengthUnit): Rough {
  const mm = unitToMm(unit)
  return { volumeMm3: raw.volumeMm3 * mm ** 3, areaMm2: raw.areaMm2 * mm ** 2 }
}

/**
 * Work at the start of a new run. Figures from the older run stay while only the recipe or the pose
 * changed (`sameMesh`); in another unit they would be off by a factor, so the rough ones take their
 * place.
 */
export function beginWork(
  before: PartWork | undefined,
  sameMesh: boolean,
  rough: Rough | null,
  read: PartRead | null,
): PartWork {
  if (before?.kind === 'done' && sameMesh) return { ...before, newerFraction: 0 }
  const known = rough ?? (read === null ? null : roughOf(read))
  return known === null
    ? { kind: 'queued' }
    : { kind: 'rough', rough: known, read, coarse: null, fraction: 0 }
}

/** Work after an event of the running job. */
export function moveWork(before: PartWork, event: AnalyseEvent): PartWork {
  if (before.kind === 'failed') return before
  if (event.kind === 'progress') {
    if (before.kind === 'done') return { ...before, newerFraction: event.fraction }
    if (before.kind === 'rough') return { ...before, fraction: event.fraction }
    return { kind: 'reading', fraction: event.fraction }
  }
  if (before.kind === 'done') return before
  if (event.kind === 'coarse') {
    return before.kind === 'rough' ? { ...before, coarse: event.census } : before
  }
  const read = before.kind === 'rough' ? before.read : null
  const fraction = before.kind === 'queued' ? 0 : before.fraction
  return event.kind === 'rough'
    ? { kind: 'rough', rough: event.rough, read, coarse: null, fraction }
    : { kind: 'rough', rough: roughOf(event.read), read: event.read, coarse: null, fraction }
}

export function doneWork(read: PartRead, census: Census): PartWork {
  return { kind: 'done', read, census, newerFraction: null }
}

export function failedWork(before: PartWork | undefined, problem: Problem): PartWork {
  const read = before === undefined || !('read' in before) ? null : before.read
  return { kind: 'failed', problem, read }
}

function roughOf(read: PartRead): Rough {
  return { volumeMm3: read.measure.volumeMm3, areaMm2: read.measure.areaMm2 }
}
