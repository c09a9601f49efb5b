import { useEffect, useMemo, useState } from 'react'
import type { RunWay } from '../../core/model/runs.ts'
import { finishOf, type Finish } from '../../core/runs/finish.ts'
import type { ReckonedRun } from '../../core/runs/reckonRuns.ts'
import { tellRuns, type RunTold } from '../../core/runs/tellRuns.ts'
import { frameSum, ledgerRows, reckonedRuns } from '../../state/store/derived.ts'
import type { LaidRuns, RunsAnswer } from '../../state/store/types.ts'
import { useAppState } from '../appContext.ts'

const WAYS: readonly RunWay[] = ['fewest beds', 'evenings', 'least loss']

export interface PrintRuns {
  readonly told: readonly RunTold[]
  /** Pieces that lie in no run: they are counted as printed one by one. */
  readonly alone: number
  readonly unfit: RunsAnswer['unfit']
  readonly plans: RunsAnswer['plans']
  /** What the pieces would take divided in another way, before what scale and clock taught. */
  readonly ways: Partial<Record<RunWay, WaySum>>
}

/** Runs of one way together. */
interface WaySum {
  readonly count: number
  /** Printers at once, or one after the other. */
  readonly finish: Finish
  /** With what failed ones before good ones cost, of which `failures` is that. */
  readonly cost: number
  readonly failures: number
  /** What the dearest of them loses when it fails at its end. */
  readonly mostLost: number
}

/** The frame's print runs with each part drawn from above; null until both are there. */
export function usePrintRuns(): PrintRuns | null {
  const laid = useAppState((state) => state.runs)
  const reckoned = useAppState(reckonedRuns)
  const rows = useAppState(ledgerRows)
  const sum = useAppState(frameSum)
  const frame = useAppState((state) => state.frame)
  const others = useOtherWays(laid)
  return useMemo(() => {
    if (laid === null || reckoned === null || others === null) return null
    const outlines = new Map(Object.entries(others.plans).map(([id, { outline }]) => [id, outline]))
    const told = tellRuns(reckoned.runs, sum, outlines, frame)
    const inRuns = told.reduce((all, { spots }) => all + spots.length, 0)
    const pieces = rows
      .filter(({ figures }) => figures !== null)
      .reduce((all, { part }) => all + part.quantity + part.spares, 0)
    const ways = Object.fromEntries(
      Object.entries(others.ways).map(([way, planned]) => [
        way,
        sumOf(laid.reckon(rows, frame, planned).runs),
      ]),
    )
    const { unfit } = laid.answer
    return { told, alone: pieces - inRuns, unfit, plans: others.plans, ways }
  }, [laid, reckoned, others, frame, rows, sum])
}

function sumOf(
  runs: readonly Pick<ReckonedRun, 'printerId' | 'timeS' | 'cost' | 'lostAtEnd'>[],
): WaySum {
  return {
    count: runs.length,
    finish: finishOf(runs),
    cost: runs.reduce((all, { cost }) => all + cost, 0),
    failures: runs.reduce((all, { cost, lostAtEnd }) => all + cost - lostAtEnd, 0),
    mostLost: Math.max(0, ...runs.map(({ lostAtEnd }) => lostAtEnd)),
  }
}

/** What each laying gave, for as long as it is the frame's: the sheet may be left and come back. */
const KNOWN = new WeakMap<LaidRuns['layOthers'], RunsAnswer>()

/** The pieces divided in every way, and drawn; null until they are there for the first time. */
function useOtherWays(laid: LaidRuns | null): RunsAnswer | null {
  const layOthers = laid?.isOld === false ? laid.layOthers : null
  const [others, setOthers] = useState<RunsAnswer | null>(() =>
    layOthers === null ? null : (KNOWN.get(layOthers) ?? null),
  )
  useEffect(() => {
    if (layOthers === null) return
    const stop = new AbortController()
    const asked = KNOWN.get(layOthers) ?? layOthers(WAYS, stop.signal)
    void Promise.resolve(asked).then((answer) => {
      if (answer === null || stop.signal.aborted) return
      KNOWN.set(layOthers, answer)
      setOthers(answer)
    })
    return () => {
      stop.abort()
    }
  }, [layOthers])
  return others
}
