import type { Outcome } from '../core/model/problem.ts'
import type { JobKind, JobTable } from './protocol.ts'

export interface RunOptions<K extends JobKind> {
  readonly onEvent?: (event: JobTable[K]['event']) => void
  /** Ends the job, also in mid-work; its outcome is then the problem `cancelled`. */
  readonly signal?: AbortSignal
}

/** Runs jobs somewhere: in a pool of workers (page) or right here (tests, Node). Never rejects. */
export interface Runner {
  run<K extends JobKind>(
    ask: JobTable[K]['ask'] & { readonly kind: K },
    options?: RunOptions<K>,
  ): Promise<Outcome<JobTable[K]['answer']>>
  /** Ends every worker; later jobs are answered `cancelled`. */
  close(): void
}
