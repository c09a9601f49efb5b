import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { layerStiffness } from '../../../core/choose/layerStiffness.ts'
import { savingOf, type StepSaving } from '../../../core/choose/stepSavings.ts'
import type { Census } from '../../../core/model/census.ts'
import type { PartWay } from '../../../core/model/frame.ts'
import type { Part } from '../../../core/model/frame.ts'
import type { PartShape } from '../../../state/store/types.ts'
import { useActions } from '../../appContext.ts'
import { useLateAppState } from '../../useLateAppState.ts'
import { useInSlices } from '../../inTurn/useInSlices.ts'
import { countedSteps, freeSteps, type Step } from '../../part/steps.ts'
import { frameThen, pricerOf, type FrameThen } from '../chosenParts.ts'
import { countJobs, type CountJob } from '../countJobs.ts'
import { layersHangOn } from '../../layersHangOn.ts'

/** One step of one part, and what it saves. */
export interface FrameStep {
  readonly part: Part
  readonly item: number
  readonly step: Step
  readonly way: PartWay
  readonly saving: StepSaving
}

/** Censuses of steps by part and patch, for the part as it was when they were counted. */
type Counts = ReadonlyMap<string, Census>

const NONE: Counts = new Map()

export interface FrameSteps {
  /** Null until they are reckoned for the first time. */
  readonly steps: readonly FrameStep[] | null
  /** How many of the steps that need a count have one. */
  readonly counted: number
  readonly toCount: number
  readonly isCounting: boolean
  readonly count: () => void
}

/**
 * Every single step of every part that saves grams. Infill and patterns are there at once; walls,
 * skins, layers and lines once they are counted, which is asked for.
 */
export function useFrameSteps(shapes: ReadonlyMap<string, PartShape>): FrameSteps {
  const { tryRecipe } = useActions()
  // A moment late, so that a point that is dragged does not wait for it.
  const then = useLateAppState(frameThen)
  const [counts, setCounts] = useState(NONE)
  const [isCounting, setCounting] = useState(false)
  const running = useRef<AbortController | null>(null)
  const plan = useMemo(() => planOf(then), [then])
  const jobs = useMemo(
    () => plan.filter(({ step, key }) => step.geometry !== null && !counts.has(key)),
    [plan, counts],
  )
  useEffect(
    () => () => {
      running.current?.abort()
    },
    [],
  )
  const count = useCallback(() => {
    running.current?.abort()
    const abort = new AbortController()
    running.current = abort
    setCounting(true)
    const asked = jobs.map(({ part, step }): CountJob => ({
      partId: part.id,
      patch: step.geometry ?? {},
    }))
    const keys = new Map(asked.map((job, i) => [job, jobs[i]?.key ?? '']))
    void countJobs(asked, tryRecipe, abort.signal, (job, census) => {
      const key = keys.get(job)
      if (census === null || key === undefined) return
      setCounts((before) => new Map([...before, [key, census]]))
    }).then(() => {
      if (!abort.signal.aborted) setCounting(false)
    })
  }, [jobs, tryRecipe])

  const reckon = useCallback(
    () => savingsOf(then, plan, counts, shapes),
    [then, plan, counts, shapes],
  )
  const steps = useInSlices(reckon)
  const toCount = plan.filter(({ step }) => step.geometry !== null).length
  return { steps, counted: toCount - jobs.length, toCount, isCounting, count }
}

interface PlannedStep {
  readonly part: Part
  readonly step: Step
  /** Of the part as it is and the step: a count for another recipe is not taken for it. */
  readonly key: string
}

function planOf({ rows, censuses }: FrameThen): readonly PlannedStep[] {
  return rows
    .filter(({ part }) => censuses.has(part.id))
    .flatMap(({ part }) => {
      const { recipe } = part
      const laid = { ...recipe, infillPct: 0, pattern: null }
      const base = JSON.stringify([layersHangOn(part), laid])
      return [...countedSteps(recipe), ...freeSteps(recipe)].map((step) => ({
        part,
        step,
        key: `${base} ${JSON.stringify(step.geometry)}`,
      }))
    })
}

/** All of them take some 70 ms for thirteen parts: one at a time. */
function* savingsOf(
  then: FrameThen,
  plan: readonly PlannedStep[],
  counts: Counts,
  shapes: ReadonlyMap<string, PartShape>,
): Generator<void, readonly FrameStep[], void> {
  const { frame, rows, censuses } = then
  const steps: FrameStep[] = []
  for (const row of rows) {
    const { part } = row
    const present = censuses.get(part.id)
    if (present === undefined) continue
    yield
    const { stiffnessOf } = layerStiffness(present, shapes.get(part.id)?.outline ?? null)
    const price = pricerOf(then, row, present, stiffnessOf)
    const now = price(present, part)
    const item = frame.parts.findIndex(({ id }) => id === part.id) + 1
    for (const { step, key } of plan.filter((one) => one.part === part)) {
      const census = step.geometry === null ? present : counts.get(key)
      if (census === undefined) continue
      yield
      const way = { recipe: { ...part.recipe, ...step.recipe }, materialId: part.materialId }
      const saving = savingOf(now, price(census, way), step.geometry !== null)
      if (saving.massG.mid < 0) steps.push({ part, item, step, way, saving })
    }
  }
  return steps
}
