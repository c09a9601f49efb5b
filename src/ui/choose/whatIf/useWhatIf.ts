import { useEffect, useMemo, useState } from 'react'
import { useShallow } from 'zustand/react/shallow'
import { beamGives } from '../../../core/choose/gives/beamGives.ts'
import type { Gives } from '../../../core/choose/gives/types.ts'
import { layerStiffness } from '../../../core/choose/layerStiffness.ts'
import { laidRecipe } from '../../../core/figures/laidRecipe.ts'
import type { Worth } from '../../../core/choose/types.ts'
import {
  plasticsWorthALook,
  sameAs,
  whatIfAxes,
  type WhatIfAxis,
} from '../../../core/choose/whatIfAxes.ts'
import type { Census } from '../../../core/model/census.ts'
import type { PartWay } from '../../../core/model/frame.ts'
import type { Recipe } from '../../../core/model/settings.ts'
import { frameSum, type LedgerRow } from '../../../state/store/derived.ts'
import { materialsOf } from '../../../state/store/materialOf.ts'
import type { PartShape } from '../../../state/store/types.ts'
import { useActions, useAppState, useReadState } from '../../appContext.ts'
import { useLate } from '../../useLate.ts'
import { useSections } from '../../part/stiffness/useSections.ts'
import { frameThen, presentCensus, pricerOf } from '../chosenParts.ts'
import { countJobs } from '../countJobs.ts'

/** One value of one setting, and the frame with it. */
export interface WhatIfPoint {
  readonly value: number
  readonly way: PartWay
  readonly isNow: boolean
  readonly worth: PointWorth
}

/**
 * Of the whole frame; of this part its stiffness over that as it stands, and how it gives as a
 * beam.
 */
export interface PointWorth extends Worth {
  readonly gives: Gives | null
}

export interface WhatIfPanel {
  readonly key: WhatIfAxis['key']
  readonly isCurve: boolean
  readonly points: readonly WhatIfPoint[]
}

/**
 * So long the settings stand still before layers are counted: the part's own count goes first, ms.
 */
const QUIET_MS = 400

interface Counts {
  readonly of: Census | null
  readonly byPatch: ReadonlyMap<string, Census>
}

const NONE: Counts = { of: null, byPatch: new Map() }

/**
 * The frame over each setting of a part, one at a time; points come as their layers are counted.
 */
export function useWhatIf(now: LedgerRow, shape: PartShape | null): readonly WhatIfPanel[] {
  const row = useLate(now)
  const { part } = row
  const { id, recipe, materialId } = part
  const { tryRecipe } = useActions()
  const readState = useReadState()
  const sum = useAppState(frameSum)
  const materials = useAppState(
    useShallow(({ frame }) => {
      const inUse = new Set(frame.parts.map((each) => each.materialId))
      return plasticsWorthALook(materialsOf(frame), inUse)
    }),
  )
  const census = presentCensus(row)
  const axes = useMemo(
    () => whatIfAxes({ recipe, materialId }, materials),
    [recipe, materialId, materials],
  )
  // Infill changes no layer: what was counted stays.
  const wanted = JSON.stringify(
    axes.flatMap(({ ways }) => ways.flatMap(({ patch }) => (patch === null ? [] : [patch]))),
  )
  const others = useMemo(() => JSON.parse(wanted) as readonly Partial<Recipe>[], [wanted])
  const { load, slender, scale } = useSections(row, others)
  const [counts, setCounts] = useState(NONE)
  useEffect(() => {
    if (census === null) return
    const abort = new AbortController()
    const timer = setTimeout(() => {
      const patches = JSON.parse(wanted) as readonly object[]
      const jobs = patches.map((patch) => ({ partId: id, patch }))
      void countJobs(jobs, tryRecipe, abort.signal, ({ patch }, found) => {
        if (found === null) return
        setCounts((before) => ({
          of: census,
          byPatch: new Map([
            ...(before.of === census ? before.byPatch : []),
            [JSON.stringify(patch), found],
          ]),
        }))
      })
    }, QUIET_MS)
    return () => {
      clearTimeout(timer)
      abort.abort()
    }
  }, [census, wanted, id, tryRecipe])

  const [last, setLast] = useState<readonly WhatIfPanel[]>([])
  const panels = useMemo(() => {
    if (census === null) return null
    const then = frameThen(readState())
    const own = then.rows.find((each) => each.part.id === id)
    if (own === undefined || own.part !== part) return null
    const { stiffnessOf } = layerStiffness(census, shape?.outline ?? null)
    const lay = (one: Recipe) => laidRecipe({ recipe: one, zones: part.zones }, then.setup.printer)
    const givesOf = slender.size === 0 ? null : beamGives(slender, lay, load, scale)
    const price = pricerOf(then, own, census, stiffnessOf, givesOf)
    const before = price(census, part)
    return axes.map(({ key, isCurve, ways }): WhatIfPanel => {
      const points = ways.flatMap(({ value, way, patch }): readonly WhatIfPoint[] => {
        const found =
          patch === null
            ? census
            : counts.of === census
              ? counts.byPatch.get(JSON.stringify(patch))
              : undefined
        if (found === undefined) return []
        const one = price(found, way)
        return [
          {
            value,
            way,
            isNow: sameAs(part, way),
            worth: {
              massG: sum.printed.massG.mid + one.massG - before.massG,
              timeS: sum.withSpares.timeS.mid + one.timeS - before.timeS,
              cost: sum.withSpares.cost.mid + one.cost - before.cost,
              stiffness: one.stiffness,
              gives: one.gives,
            },
          },
        ]
      })
      const ordered = isCurve
        ? points
        : points
            .toSorted((a, b) => a.worth.massG - b.worth.massG)
            .map((point, value) => ({ ...point, value }))
      return { key, isCurve, points: ordered }
    })
  }, [census, axes, counts, sum, shape, part, id, readState, slender, load, scale])
  // While newer layers are counted the older picture stays, and the hand's place in it.
  if (panels !== null && panels !== last) setLast(panels)
  return panels ?? last
}
