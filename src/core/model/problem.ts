import type { Finding } from './mesh.ts'

/**
 * Why a file or a part could not be priced. Facts in `message` (both numbers, the byte offset);
 * what to do in `advice`.
 */
export interface Problem {
  readonly code: ProblemCode
  readonly message: string
  readonly advice: string
  /**
   * What the reader had found odd about a file that was refused later on; left out where it found
   * nothing.
   */
  readonly findings?: readonly Finding[]
}

export type ProblemCode =
  | 'empty-file'
  | 'unknown-format'
  | 'truncated'
  | 'bad-number'
  | 'bad-index'
  | 'bad-archive'
  | 'bad-xml'
  | 'bad-3mf'
  | 'too-large'
  | 'no-triangles'
  | 'no-volume'
  | 'too-open'
  | 'not-finite'
  | 'bad-settings'
  | 'too-many-layers'
  | 'cancelled'
  | 'crashed'
  | 'unreadable-file'
  | 'missing-mesh'
  | 'bad-project'

export type Outcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem }

/** Thrown inside core, caught at the job boundary; carries a `Problem`. */
export class PreweighError extends Error {
  readonly problem: Problem
  constructor(
    code: ProblemCode,
    message: string,
    advice: string,
    findings: readonly Finding[] = [],
  ) {
    super(message)
    this.name = 'PreweighError'
    this.problem = { code, message, advice, ...(findings.length > 0 ? { findings } : {}) }
  }
}
