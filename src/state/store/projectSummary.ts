import type { Frame } from '../../core/model/frame.ts'
import { NEW_FRAME_NAME } from './emptyFrame.ts'
import type { ProjectSummary } from './types.ts'

/** How long a deleted project can be brought back, and a mesh nobody needs is kept, ms. */
export const DAY_MS = 24 * 3600 * 1000

/** What the list of projects shows of one. */
export function summaryOf(frame: Frame, massG: number | null, changedAt: number): ProjectSummary {
  const { id, name, parts } = frame
  return { id, name, partCount: parts.length, massG, changedAt, deletedAt: null }
}

/** A project nobody has put anything into: not worth a line in the list. */
export function isBlank({ name, partCount }: ProjectSummary): boolean {
  return partCount === 0 && name === NEW_FRAME_NAME
}

/** Whether a project may go for good at `now`. */
export function isSpent(project: ProjectSummary, now: number): boolean {
  const { deletedAt, changedAt } = project
  return deletedAt === null
    ? isBlank(project) && changedAt < now - DAY_MS
    : deletedAt < now - DAY_MS
}

export function latestFirst(a: ProjectSummary, b: ProjectSummary): number {
  return b.changedAt - a.changedAt || (a.id < b.id ? -1 : 1)
}
