import type { GivesModel } from '../../../core/choose/gives/learnGives.ts'
import type { GivesLimit } from '../../../core/choose/gives/types.ts'
import { findFront } from '../../../core/choose/findFront.ts'
import { layerStiffness } from '../../../core/choose/layerStiffness.ts'
import { partOptions, standing, type CountedGeometry } from '../../../core/choose/partOptions.ts'
import { rowOnceChanged, sumWith } from '../../../core/choose/sumWith.ts'
import { thinFront } from '../../../core/choose/thinFront.ts'
import type { Assignment, Option, PartOptions } from '../../../core/choose/types.ts'
import { geometriesOf, usualVariety, type Setting } from '../../../core/choose/variety.ts'
import { asWanted, type Wants } from '../../../core/choose/wants.ts'
import { whyNone, type Binding } from '../../../core/choose/whyNone.ts'
import type { FrameSum } from '../../../core/frame/types.ts'
import type { Actions } from '../../../state/actions/types.ts'
import type { PartShape } from '../../../state/store/types.ts'
import type { FrameThen } from '../chosenParts.ts'
import { countJobs, type CountJob } from '../countJobs.ts'
import { learnPart } from './learnPart.ts'
import { inSlices, pause } from '../../inTurn/inSlices.ts'

/** What somebody asks of a search. */
export interface FindAsk {
  readonly wants: Wants
  readonly settings: ReadonlySet<Setting>
  readonly materialIds: readonly string[]
  /** Parts that stay as they are, by id. */
  readonly locked: ReadonlySet<string>
}

/** One solution, with the frame it makes. */
export interface Solution {
  readonly assignment: Assignment
  readonly options: ReadonlyMap<string, Option>
  readonly sum: FrameSum
}

export interface Found {
  readonly solutions: readonly Solution[]
  /** All there are; `solutions` are those that differ most. */
  readonly count: number
  readonly bindings: readonly Binding[]
  /** What was asked of how parts give, by id. */
  readonly limits: ReadonlyMap<string, GivesLimit>
}

export interface SearchNews {
  readonly counted: number
  readonly toCount: number
  /** With the parts whose ways are all counted; the others as they stand. */
  readonly found: Found | null
  /** What of how a part gives is being reckoned; null while layers are counted. */
  readonly solving: string | null
}

/** Solutions shown. */
const SHOWN = 24

/**
 * Counts what the ask needs and searches, telling the front again and again as parts are counted.
 * Null once `signal` is aborted.
 */
export async function searchFrame(
  then: FrameThen,
  ask: FindAsk,
  shapes: ReadonlyMap<string, PartShape>,
  { tryRecipe, ...givesActions }: Pick<Actions, 'tryRecipe' | 'stiffenPart' | 'sectionPart'>,
  signal: AbortSignal,
  onNews: (news: SearchNews) => void,
): Promise<Found | null> {
  const free = then.rows.filter(
    ({ part }) =>
      then.censuses.has(part.id) &&
      (!ask.locked.has(part.id) || ask.wants.gives?.has(part.id) === true),
  )
  const plans = new Map(
    free.map(({ part }) => {
      // One that stays, and is asked how it gives, has the one way it has.
      const settings = ask.locked.has(part.id) ? new Set<Setting>() : ask.settings
      const variety = usualVariety(part, settings, ask.materialIds)
      return [part.id, { variety, patches: geometriesOf(part.recipe, variety) }] as const
    }),
  )
  const jobs = free.flatMap(({ part }): readonly CountJob[] =>
    (plans.get(part.id)?.patches ?? []).slice(1).map((patch) => ({ partId: part.id, patch })),
  )
  const counted = new Map<string, CountedGeometry[]>(
    free.map(({ part }) => {
      const census = then.censuses.get(part.id)
      return [part.id, census === undefined ? [] : [{ patch: {}, census }]]
    }),
  )
  const left = new Map(
    free.map(({ part }) => [part.id, (plans.get(part.id)?.patches.length ?? 1) - 1]),
  )
  const priced = new Map<string, PartOptions>()
  let done = 0
  let shown: Found | null = null
  let solving: string | null = null
  const models = new Map<string, GivesModel>()
  const limits: ReadonlyMap<string, GivesLimit> = ask.wants.gives ?? new Map()
  const tell = (): void => {
    onNews({ counted: done, toCount: jobs.length, found: shown, solving })
  }

  function price(id: string): void {
    const row = then.rows.find(({ part }) => part.id === id)
    const plan = plans.get(id)
    const present = then.censuses.get(id)
    if (row === undefined || plan === undefined || present === undefined) return
    const outline = shapes.get(id)?.outline ?? null
    const { stiffnessOf } = layerStiffness(present, outline)
    const changed = rowOnceChanged(then.parts, then.frame, row, present, then.setup, then.lessons)
    const all = counted.get(id) ?? []
    const givesOf = models.get(id)?.givesOf ?? null
    priced.set(id, partOptions(row, all, plan.variety, then.setup, stiffnessOf, changed, givesOf))
  }
  const now = (): readonly PartOptions[] =>
    then.rows.map((row) => priced.get(row.part.id) ?? standing(row))

  // While layers are counted elsewhere, the front of the parts that are done is shown.
  let isCounting = true
  const showSome = async (): Promise<void> => {
    for (let known = 0; isCounting && !signal.aborted;) {
      await new Promise((go) => {
        setTimeout(go, 300)
      })
      if (priced.size === known || !isCounting) continue
      known = priced.size
      shown = await frontOfParts(then, now(), ask.wants, signal, false)
      tell()
    }
  }
  tell()
  for (const [id, count] of left) if (count === 0 && !limits.has(id)) price(id)
  const showing = showSome()
  await countJobs(jobs, tryRecipe, signal, ({ partId, patch }, census) => {
    if (census !== null) counted.get(partId)?.push({ patch, census })
    done += 1
    const more = (left.get(partId) ?? 1) - 1
    left.set(partId, more)
    if (more === 0 && !limits.has(partId)) price(partId)
    tell()
  })
  for (const id of limits.keys()) {
    const row = free.find(({ part }) => part.id === id)
    const variety = plans.get(id)?.variety
    if (row === undefined || variety === undefined || signal.aborted) continue
    const onDone = (at: number, all: number): void => {
      solving = `How ${row.part.name} gives: ${at} of ${all} looks.`
      tell()
    }
    const ways = { counted: counted.get(id) ?? [], variety }
    const model = await learnPart(row, ways, then, givesActions, signal, onDone)
    if (signal.aborted) break
    if (model !== null) models.set(id, model)
    price(id)
  }
  solving = null
  isCounting = false
  await showing
  return signal.aborted ? null : frontOfParts(then, now(), ask.wants, signal, true)
}

async function frontOfParts(
  then: FrameThen,
  parts: readonly PartOptions[],
  wants: Wants,
  signal: AbortSignal,
  asksWhy: boolean,
): Promise<Found | null> {
  const wanted = asWanted(parts, wants)
  const front = wanted.some(({ options }) => options.length === 0)
    ? []
    : await inSlices(findFront(wanted, wants.ceilings), signal)
  if (front === null) return null
  const bindings =
    front.length === 0 && asksWhy ? await inSlices(whyNone(parts, wants), signal) : []
  if (bindings === null) return null
  const solutions: Solution[] = []
  for (const assignment of thinFront(front, SHOWN)) {
    const options = new Map(parts.map(({ partId }, i) => [partId, assignment.options[i] as Option]))
    const sum = sumWith(then.parts, then.frame, options, then.setup, then.lessons)
    solutions.push({ assignment, options, sum })
    await pause()
    if (signal.aborted) return null
  }
  return { solutions, count: front.length, bindings, limits: wants.gives ?? new Map() }
}
