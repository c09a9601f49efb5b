import { heaviestFirst } from '../model/grades.ts'
import type { ReadMesh } from '../model/mesh.ts'
import { PreweighError } from '../model/problem.ts'
import type { ProblemCode } from '../model/problem.ts'

/** Refusals that a file which was not read whole brings about by itself. */
const FOLLOWS: ReadonlySet<ProblemCode> = new Set(['no-triangles', 'no-volume', 'too-open'])

/**
 * Does something with a mesh that was read; a refusal then carries what the reader had found. Where
 * that made the file incomplete it comes first, since the gaps are only what follows from it.
 * `name` is the file's.
 */
export function carryFindings<T>(
  { findings }: Pick<ReadMesh, 'findings'>,
  name: string,
  work: () => T,
): T {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof PreweighError) || findings.length === 0) throw error
    const { code, message, advice } = error.problem
    const found = heaviestFirst(findings)
    const causes = found.filter(({ grade }) => grade === 'changes the grams')
    if (causes.length === 0 || !FOLLOWS.has(code)) {
      throw new PreweighError(code, message, advice, found)
    }
    throw new PreweighError(
      code,
      `${name}: ${causes.map((cause) => cause.message).join(' ')} What is there cannot be weighed: ${lower(message)}`,
      'Do that first, and only then look for gaps.',
      found,
    )
  }
}

/** A sentence that goes on behind a colon. */
const lower = (sentence: string) => sentence.charAt(0).toLowerCase() + sentence.slice(1)
