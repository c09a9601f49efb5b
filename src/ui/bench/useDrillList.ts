import { startTransition, useEffect, useMemo, useState } from 'react'
import { drillList } from '../../core/drill/drillList.ts'
import { fitChecks, type FitCheck } from '../../core/drill/fitChecks.ts'
import type { DrillRow, PartHoles } from '../../core/drill/types.ts'
import type { HoleReading } from '../../core/model/drill.ts'
import { materialOf } from '../../state/store/materialOf.ts'
import { useActions, useAppState } from '../appContext.ts'

const NO_READINGS: readonly HoleReading[] = []
/** Parts that are being opened come one after the other. */
const SETTLE_MS = 300

export interface DrillListing {
  readonly rows: readonly DrillRow[]
  readonly checks: readonly FitCheck[]
}

/** Every hole of the frame; null until they are found for the first time. */
export function useDrillList(): DrillListing | null {
  const { listHoles } = useActions()
  const frame = useAppState((state) => state.frame)
  const carried = useAppState((state) => state.workshop.holeReadings ?? NO_READINGS)
  const [found, setFound] = useState<readonly PartHoles[] | null>(null)
  const { parts } = frame
  const meshes = JSON.stringify(
    parts.map(({ id, meshHash, unit, keepsHairs }) => [id, meshHash, unit, keepsHairs]),
  )
  useEffect(() => {
    const stop = new AbortController()
    const timer = setTimeout(() => {
      void listHoles(stop.signal).then((answer) => {
        if (answer === null || stop.signal.aborted) return
        // A long table: drawn at once it would keep input waiting.
        startTransition(() => {
          setFound(answer)
        })
      })
    }, SETTLE_MS)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [listHoles, meshes])
  return useMemo(() => {
    if (found === null) return null
    const byPart = new Map(found.map((each) => [each.partId, each]))
    const drilled = parts.flatMap((part) => {
      const own = byPart.get(part.id)
      return own === undefined
        ? []
        : [{ part, material: materialOf(frame, part.materialId), found: own }]
    })
    const own = frame.holeReadings ?? NO_READINGS
    const others = carried.filter(({ id }) => !id.startsWith(`${frame.id}/`))
    const { joints, items } = frame.aircraft
    const rows = drillList(drilled, joints, frame.printer.id, [...own, ...others])
    return { rows, checks: fitChecks(rows, drilled, items) }
  }, [found, frame, parts, carried])
}
