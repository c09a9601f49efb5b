import { useCallback, useEffect, useRef, useState } from 'react'
import type { PartLoad } from '../../../core/aircraft/twin/partLoad.ts'
import { DRAFT_MM } from '../../../core/data/stiffness.ts'
import { jointBoresOf } from '../../../core/aircraft/twin/partLoad.ts'
import type { LoadPick } from '../../../core/stiffness/part/chooseLoad.ts'
import type { StiffPart } from '../../../core/stiffness/part/stiffPart.ts'
import type { LedgerRow } from '../../../state/store/derived.ts'
import { useActions, useReadState } from '../../appContext.ts'
import { layersHangOn } from '../../layersHangOn.ts'

/** Cells of the last answer, a draft’s being those of the first. mm */
const FINAL_MM = 1

export interface Reckoning {
  /** The last answer, and the settings it was for; null before any. */
  readonly found: { readonly of: string; readonly part: StiffPart } | null
  /** 0–1 while it runs; null while it stands. */
  readonly progress: number | null
  readonly trouble: string | null
  readonly start: () => void
  readonly stop: () => void
}

/** Everything an answer depends on. */
export function settingsOf(
  { part, material, sum }: LedgerRow,
  load: Pick<PartLoad, 'loadN' | 'tipG'>,
  pick: LoadPick,
  habits: unknown,
): string {
  const piece = sum?.pieceG.mid ?? 0
  return JSON.stringify([layersHangOn(part), part.recipe, material, piece, load, pick, habits])
}

/** A draft soon, then the finer sum; each start calls the one before off. */
export function useStiffness(
  row: LedgerRow,
  load: Pick<PartLoad, 'loadN' | 'tipG'>,
  pick: LoadPick,
  settings: string,
): Reckoning {
  const { stiffenPart } = useActions()
  const readState = useReadState()
  const [found, setFound] = useState<Reckoning['found']>(null)
  const [progress, setProgress] = useState<number | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const running = useRef<AbortController | null>(null)
  const { id } = row.part
  const massG = row.sum?.pieceG.mid ?? 0
  const { loadN, tipG } = load

  const stop = useCallback(() => {
    running.current?.abort()
    running.current = null
    setProgress(null)
  }, [])
  useEffect(() => () => running.current?.abort(), [])

  const start = useCallback(() => {
    running.current?.abort()
    const abort = new AbortController()
    running.current = abort
    const { signal } = abort
    const run = async () => {
      setTrouble(null)
      setProgress(0)
      const jointBores = jointBoresOf(id, readState().frame.aircraft)
      for (const cellMm of [DRAFT_MM, FINAL_MM]) {
        const from = cellMm === DRAFT_MM ? 0 : 0.2
        const to = cellMm === DRAFT_MM ? 0.2 : 1
        const outcome = await stiffenPart(
          id,
          { massG, jointBores, pick, loadN, tipG, cellMm, wantTones: true },
          {
            signal,
            onEvent: ({ fraction }) => {
              if (!signal.aborted) setProgress(from + (to - from) * fraction)
            },
          },
        )
        if (signal.aborted) return
        if (outcome === null) {
          setTrouble('The mesh of this part is not at hand. Drop its file again.')
          break
        }
        if (!outcome.ok) {
          setTrouble(`${outcome.problem.message} ${outcome.problem.advice}`)
          break
        }
        setFound({ of: settings, part: outcome.value })
      }
      setProgress(null)
    }
    run().catch((error: unknown) => {
      if (signal.aborted) return
      setProgress(null)
      setTrouble(error instanceof Error ? error.message : String(error))
    })
  }, [stiffenPart, readState, id, massG, pick, loadN, tipG, settings])

  return { found, progress, trouble, start, stop }
}
