import { useEffect, useMemo, useState } from 'react'
import { sumWith } from '../../../core/choose/sumWith.ts'
import type { Option } from '../../../core/choose/types.ts'
import type { FrameSum } from '../../../core/frame/types.ts'
import type { Census } from '../../../core/model/census.ts'
import type { Part, Variant } from '../../../core/model/frame.ts'
import type { GeometrySettings, Recipe } from '../../../core/model/settings.ts'
import { useActions } from '../../appContext.ts'
import { useLateAppState } from '../../useLateAppState.ts'
import { frameThen, type FrameThen } from '../chosenParts.ts'
import { countJobs } from '../countJobs.ts'
import { layersHangOn } from '../../layersHangOn.ts'

type Counts = ReadonlyMap<string, Census | null>

const NONE: Counts = new Map()

/** The frame with each variant taken, by its id; null while layers of it are counted. */
export function useVariantSums(variants: readonly Variant[]): ReadonlyMap<string, FrameSum | null> {
  const { tryRecipe } = useActions()
  const [counts, setCounts] = useState(NONE)
  // A moment late, so that a point that is dragged does not wait for it.
  const then = useLateAppState(frameThen)
  const wanted = useMemo(
    () =>
      variants.flatMap(({ ways }) =>
        then.rows.flatMap(({ part }) => {
          const way = ways[part.id]
          if (way === undefined || !then.censuses.has(part.id)) return []
          const key = keyOf(part, way.recipe)
          const isPresent = key === keyOf(part, part.recipe)
          return isPresent || counts.has(key) ? [] : [{ key, partId: part.id, recipe: way.recipe }]
        }),
      ),
    [variants, then, counts],
  )
  const [first] = wanted
  // One after the other: a change of `counts` asks for the next.
  useEffect(() => {
    if (first === undefined) return
    const abort = new AbortController()
    const job = { partId: first.partId, patch: geometryIn(first.recipe) }
    void countJobs([job], tryRecipe, abort.signal, (_, census) => {
      setCounts((before) => new Map([...before, [first.key, census]]))
    })
    return () => {
      abort.abort()
    }
  }, [first, tryRecipe])

  return useMemo(
    () => new Map(variants.map((variant) => [variant.id, sumOf(variant, then, counts)])),
    [variants, then, counts],
  )
}

function sumOf({ ways }: Variant, then: FrameThen, counts: Counts): FrameSum | null {
  const options = new Map<string, Option>()
  for (const { part } of then.rows) {
    const way = ways[part.id]
    const present = then.censuses.get(part.id)
    if (way === undefined || present === undefined) continue
    const key = keyOf(part, way.recipe)
    const census = key === keyOf(part, part.recipe) ? present : counts.get(key)
    if (census === undefined) return null
    options.set(part.id, { massG: 0, timeS: 0, cost: 0, stiffness: 1, way, census })
  }
  return sumWith(then.parts, then.frame, options, then.setup, then.lessons)
}

/** Everything a part's layers hang on. */
function keyOf(part: Part, recipe: Recipe): string {
  return JSON.stringify([layersHangOn(part), geometryIn(recipe)])
}

function geometryIn(recipe: Recipe): GeometrySettings {
  const { infillPct: _share, pattern: _pattern, ...geometry } = recipe
  return geometry
}
