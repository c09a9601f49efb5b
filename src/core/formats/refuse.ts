import { PreweighError } from '../model/problem.ts'
import type { ProblemCode } from '../model/problem.ts'
import { grouped } from '../words/counts.ts'
import { MAX_TRIANGLES } from './limits.ts'

/**
 * Throws a `PreweighError` whose message begins with the file's name. `what` and `advice` are whole
 * sentences.
 */
export function refuse(name: string, code: ProblemCode, what: string, advice: string): never {
  throw new PreweighError(code, `${name === '' ? 'This file' : name}: ${what}`, advice)
}

/** Refuses a mesh with more triangles than a browser can hold. */
export function refuseTooMany(name: string, triangles: number): never {
  refuse(
    name,
    'too-large',
    `It has ${grouped(triangles)} triangles or more, and ${grouped(MAX_TRIANGLES)} is the most that can be held.`,
    'Export it again with a coarser mesh: a chord error of 0.01 mm is finer than any printer.',
  )
}
