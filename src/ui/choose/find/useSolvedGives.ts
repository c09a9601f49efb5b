import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { loadOf } from '../../../core/aircraft/twin/loadOf.ts'
import type { GivesLimit } from '../../../core/choose/gives/types.ts'
import { DRAFT_MM } from '../../../core/data/stiffness.ts'
import type { StiffnessFigures } from '../../../core/stiffness/part/tellPart.ts'
import { useActions } from '../../appContext.ts'
import { useKeptLoads } from '../../part/stiffness/keptLoads.ts'
import type { FrameThen } from '../chosenParts.ts'
import type { Solution } from './searchFrame.ts'

/** How a part gives as a solution prints it, or why nobody can tell. */
export type SolvedPart = Pick<StiffnessFigures, 'deflectionMm' | 'hz'> | { readonly why: string }

export interface SolvedGives {
  /** By part id, as far as they are there. */
  readonly found: ReadonlyMap<string, SolvedPart>
  /** 0–1 while parts are solved; null while none is. */
  readonly progress: number | null
  readonly start: () => void
  readonly stop: () => void
}

interface Run {
  /** What it is of. */
  readonly of: readonly Job[]
  readonly found: ReadonlyMap<string, SolvedPart>
  readonly progress: number | null
}

/**
 * Solves anew the parts of a solution that were asked how they give, each as the solution prints
 * it, since the search told of them by scaled figures. Begins by itself; answers are kept, so that
 * one looked at again, or taken, is there at once.
 */
export function useSolvedGives(
  solution: Solution,
  then: FrameThen,
  limits: ReadonlyMap<string, GivesLimit>,
): SolvedGives {
  const { stiffenPart } = useActions()
  const typed = useKeptLoads()
  const jobs = useMemo(() => jobsOf(solution, then, limits, typed), [solution, then, limits, typed])
  const [run, setRun] = useState<Run>({ of: jobs, ...BEGUN })
  const running = useRef<AbortController | null>(null)

  const stop = useCallback(() => {
    running.current?.abort()
    running.current = null
    setRun((before) => ({
      ...(before.of === jobs ? before : { of: jobs, ...BEGUN }),
      progress: null,
    }))
  }, [jobs])

  const begin = useCallback(() => {
    running.current?.abort()
    const abort = new AbortController()
    running.current = abort
    const { signal } = abort
    const tell = (change: (own: Run) => Partial<Run>): void => {
      if (signal.aborted) return
      setRun((before) => {
        const own = before.of === jobs ? before : { of: jobs, ...BEGUN }
        return { ...own, ...change(own) }
      })
    }
    const solveAll = async (): Promise<void> => {
      for (const [at, { id, wanted, other }] of jobs.entries()) {
        const onEvent = ({ fraction }: { readonly fraction: number }): void =>
          tell(() => ({ progress: (at + fraction) / jobs.length }))
        const outcome = await stiffenPart(id, wanted, { signal, onEvent }, other)
        if (signal.aborted) return
        const solved: SolvedPart =
          outcome === null
            ? { why: 'its mesh is not at hand.' }
            : outcome.ok
              ? outcome.value.figures
              : { why: outcome.problem.message }
        tell(({ found }) => ({
          found: new Map([...found, [id, solved]]),
          progress: at + 1 === jobs.length ? null : (at + 1) / jobs.length,
        }))
      }
    }
    void solveAll()
  }, [jobs, stiffenPart])

  const start = useCallback(() => {
    setRun({ of: jobs, ...BEGUN })
    begin()
  }, [jobs, begin])

  useEffect(() => {
    begin()
    return () => running.current?.abort()
  }, [begin])

  // Of another solution nothing is known yet.
  const isOwn = run.of === jobs
  const { found, progress } = isOwn ? run : BEGUN
  return { found, progress, start, stop }
}

const BEGUN: Omit<Run, 'of'> = { found: new Map(), progress: 0 }

type Job = ReturnType<typeof jobsOf>[number]

/** As the part's own sheet asks for it once the solution is taken. */
function jobsOf(
  { options, sum }: Solution,
  { frame, setup }: FrameThen,
  limits: ReadonlyMap<string, GivesLimit>,
  typed: ReturnType<typeof useKeptLoads>,
) {
  return sum.rows.flatMap(({ part, pieceG }) => {
    const way = options.get(part.id)?.way
    if (way === undefined || !limits.has(part.id)) return []
    const { pick, jointBores, loadN, tipG } = loadOf(part, frame.aircraft, typed.get(part.id))
    const massG = pieceG.mid
    const cellMm = DRAFT_MM
    return [
      {
        id: part.id,
        wanted: { massG, jointBores, pick, loadN, tipG, cellMm, wantTones: true },
        other: { recipe: way.recipe, material: setup.materialOf(way.materialId) },
      },
    ]
  })
}
