import type { GeometrySettings } from '../../core/model/settings.ts'
import type { Census } from '../../core/model/census.ts'
import type { Actions } from '../../state/actions/types.ts'

/** Layers of one part to be counted with some of its recipe changed. */
export interface CountJob {
  readonly partId: string
  readonly patch: Partial<GeometrySettings>
}

/** So many at once: the pool has that many workers at most. */
const LANES = 4

/**
 * Counts one job after the other in as many lanes as there are workers. What is counted is kept, so
 * that asked again it is there at once: called off, it goes on where it was. What cannot be counted
 * is told as null; the part's own count says what is wrong with it.
 */
export async function countJobs(
  jobs: readonly CountJob[],
  tryRecipe: Actions['tryRecipe'],
  signal: AbortSignal,
  onCounted: (job: CountJob, census: Census | null) => void,
): Promise<void> {
  const waiting = [...jobs]
  const lane = async (): Promise<void> => {
    for (let job = waiting.shift(); job !== undefined; job = waiting.shift()) {
      const census = await tryRecipe(job.partId, job.patch, signal).catch(() => null)
      if (signal.aborted) return
      onCounted(job, census)
    }
  }
  await Promise.all(Array.from({ length: LANES }, lane))
}
