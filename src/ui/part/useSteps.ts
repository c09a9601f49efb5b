import { useEffect, useMemo, useState } from 'react'
import type { GeometrySettings } from '../../core/model/settings.ts'
import type { Census } from '../../core/model/census.ts'
import { materialsOf } from '../../state/store/materialOf.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import { useActions } from '../appContext.ts'
import { useLateAppState } from '../useLateAppState.ts'
import { frameThen, NOT_ASKED, pricerOf } from '../choose/chosenParts.ts'
import { countedSteps, freeSteps, type Step } from './steps.ts'

/** A step and what it would do to the frame. */
export interface StepEffect {
  readonly step: Step
  /** Differences of the frame: mass of what flies; hours and money of all that is printed. */
  readonly massG: number
  readonly timeS: number
  readonly cost: number
  /** Printed mass of the frame with it, g. */
  readonly frameG: number
  /** One piece of the part with it, g. */
  readonly pieceG: number
}

/**
 * So long the settings have to stand still before steps are counted: the part's own count goes
 * first, ms.
 */
const QUIET_MS = 400

/** Censuses of steps, and the part's own census they belong to. */
interface Counted {
  readonly of: Census | null
  readonly steps: ReadonlyMap<Step, Census>
}

const NONE: Counted = { of: null, steps: new Map() }

/**
 * What each step of a part's settings would do. Infill, patterns and plastics follow from the
 * present count at once; the others come as their layers are counted, one after the other. While
 * older layers are shown there are none.
 */
export function useSteps({ part: { id } }: LedgerRow): readonly StepEffect[] {
  // A moment late, so that a slider that is dragged does not wait for it.
  const then = useLateAppState(frameThen)
  const row = then.rows.find(({ part }) => part.id === id)
  const census = then.censuses.get(id) ?? null
  const { tryRecipe } = useActions()
  const recipe = row?.part.recipe ?? null
  // Infill changes no layer: the text of the rest stays, and with it what was counted.
  const laid = recipe === null ? null : JSON.stringify({ ...recipe, infillPct: 0, pattern: null })
  const steps = useMemo(
    () => (laid === null ? [] : countedSteps(JSON.parse(laid) as GeometrySettings)),
    [laid],
  )
  const [counted, setCounted] = useState(NONE)

  useEffect(() => {
    if (census === null) return
    const abort = new AbortController()
    const run = async () => {
      for (const step of steps) {
        if (step.geometry === null) continue
        const found = await tryRecipe(id, step.geometry, abort.signal)
        if (found === null || abort.signal.aborted) return
        setCounted((before) => ({
          of: census,
          steps: new Map([...(before.of === census ? before.steps : []), [step, found]]),
        }))
      }
    }
    const timer = setTimeout(() => {
      run().catch(() => {
        // The part's own count says what is wrong with it; a step that cannot be counted is not
        // offered.
      })
    }, QUIET_MS)
    return () => {
      clearTimeout(timer)
      abort.abort()
    }
  }, [census, steps, id, tryRecipe])

  return useMemo(() => {
    if (census === null || row === undefined) return []
    const { part, material } = row
    const price = pricerOf(then, row, census, NOT_ASKED)
    const now = price(census, part)
    // What the scale taught of this part holds for the step too.
    const ratio = now.figures.massG.mid > 0 ? row.pieceG.mid / now.figures.massG.mid : 1
    const effect = (step: Step, of: Census): StepEffect => {
      const way = {
        recipe: { ...part.recipe, ...step.recipe },
        materialId: step.material?.id ?? part.materialId,
      }
      const one = price(of, way)
      const massG = one.massG - now.massG
      return {
        step,
        massG,
        timeS: one.timeS - now.timeS,
        cost: one.cost - now.cost,
        frameG: then.printedG + massG,
        pieceG: one.figures.massG.mid * ratio,
      }
    }
    const effects = steps.flatMap((step) => {
      const of = counted.of === census ? counted.steps.get(step) : undefined
      return of === undefined ? [] : [effect(step, of)]
    })
    const free = freeSteps(part.recipe).map((step) => effect(step, census))
    const plastics = materialsOf(then.frame)
      .filter((one) => one.id !== material.id)
      .map((one) =>
        effect(
          { key: 'plastic', words: one.name, recipe: {}, material: one, geometry: null },
          census,
        ),
      )
    const lightest = plastics.toSorted((a, b) => a.massG - b.massG)[0]
    const cheapest = plastics
      .filter((one) => one !== lightest)
      .toSorted((a, b) => a.cost - b.cost)[0]
    return [...effects, ...free, ...[lightest, cheapest].filter((one) => one !== undefined)]
  }, [then, row, census, steps, counted])
}
