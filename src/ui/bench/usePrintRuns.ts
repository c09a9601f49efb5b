import { useEffect, useMemo, useState } from 'react'
import { RUNS_DEFAULTS } from '../../core/data/runs.ts'
import type { RunWay } from '../../core/model/runs.ts'
import { bedOf } from '../../core/runs/planRuns.ts'
import { tellRuns, type RunsTold } from '../../core/runs/tellRuns.ts'
import { frameSum, ledgerRows } from '../../state/store/derived.ts'
import type { RunsAnswer } from '../../state/store/types.ts'
import { useActions, useAppState } from '../appContext.ts'

/** Typing and dragging settle first: laying takes some seconds. */
const SETTLE_MS = 400

const WAYS: readonly RunWay[] = ['fewest beds', 'evenings', 'least loss']

export interface PrintRuns {
  readonly answer: RunsAnswer
  /** Null where there are too many pieces. */
  readonly told: Readonly<Record<RunWay, RunsTold>> | null
  /** Newer ones are being laid. */
  readonly isOld: boolean
}

/** The frame's print runs, laid in a worker; null until they are there for the first time. */
export function usePrintRuns(): PrintRuns | null {
  const { layRuns } = useActions()
  const rows = useAppState(ledgerRows)
  const sum = useAppState(frameSum)
  const printer = useAppState((state) => state.frame.printer)
  const prices = useAppState((state) => state.frame.prices)
  const settings = useAppState((state) => state.frame.runs ?? RUNS_DEFAULTS)
  const [laid, setLaid] = useState<{ readonly answer: RunsAnswer; readonly of: unknown } | null>(
    null,
  )
  const { way: _way, ...laying } = settings
  // The way is chosen among those laid; weighing a part lays nothing anew.
  const of = JSON.stringify([
    laying,
    prices,
    printer,
    rows.map(({ part, work, material, figures }) => [
      [part.id, part.meshHash, part.unit, part.quantity + part.spares, part.pose],
      [work.kind, figures?.timeS.mid, figures?.spoolG.mid, part.recipe, material.id],
    ]),
  ])
  useEffect(() => {
    const stop = new AbortController()
    const timer = setTimeout(() => {
      void layRuns(stop.signal).then((answer) => {
        if (answer !== null && !stop.signal.aborted) setLaid({ answer, of })
      })
    }, SETTLE_MS)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [layRuns, of])
  return useMemo(() => {
    if (laid === null) return null
    const { answer } = laid
    const outlines = new Map(Object.entries(answer.plans))
    const { ways } = answer
    const bed = bedOf(printer, settings)
    const told =
      ways &&
      (Object.fromEntries(
        WAYS.map((way) => [way, tellRuns(ways[way], sum, outlines, bed)]),
      ) as Record<RunWay, RunsTold>)
    return { answer, told, isOld: laid.of !== of }
  }, [laid, of, sum, printer, settings])
}
