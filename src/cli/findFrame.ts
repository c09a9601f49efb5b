import { runToEnd } from '../core/model/runToEnd.ts'
import { findFront } from '../core/choose/findFront.ts'
import { layerStiffness } from '../core/choose/layerStiffness.ts'
import { partOptions, standing, type ChoiceSetup } from '../core/choose/partOptions.ts'
import { rowOnceChanged, sumWith } from '../core/choose/sumWith.ts'
import { thinFront } from '../core/choose/thinFront.ts'
import type { Assignment, Option, PartOptions } from '../core/choose/types.ts'
import { usualVariety, type Setting, type Variety } from '../core/choose/variety.ts'
import { asWanted, type Wants } from '../core/choose/wants.ts'
import { whyNone } from '../core/choose/whyNone.ts'
import type { Lesson } from '../core/doubt/lessons.ts'
import { carriedLessons } from '../core/frame/lessonsOf.ts'
import type { FramePart, FrameSum } from '../core/frame/types.ts'
import type { Frame, Part } from '../core/model/frame.ts'
import { materialOf } from '../state/store/materialOf.ts'
import { countWays, createWorkers } from './countWays.ts'
import { givesLimitsOf, givesOfParts } from './findGives.ts'
import type { FindAsk } from './findOptions.ts'
import type { FindReport, FoundRecipe, FoundSolution } from './findReport.ts'
import type { LoadedFrame } from './loadFrame.ts'
import { namedParts, plasticIds } from './namedParts.ts'
import { addUp } from './priceFrame.ts'

/** Searches the recipes of a frame's parts. Throws UsageError for a name it does not have. */
export async function findFrame(
  { frame, meshes, loads = new Map() }: LoadedFrame,
  ask: FindAsk & { readonly most: number },
  onProgress: (text: string) => void,
  lessons: readonly Lesson[] = [],
  full = false,
): Promise<FindReport> {
  const named = namedParts(frame)
  const locked = new Set((ask.keepParts ?? []).flatMap(named))
  const free = new Set((ask.free ?? []).flatMap(named))
  const floors = floorsOf(frame, ask, named)
  const plastics = plasticIds(frame, ask.materials ?? [])
  const tell = (name: string, fraction: number): void =>
    onProgress(`${name}: ${Math.floor(100 * fraction)} %`)
  const { looks, priced, sum, laid } = addUp({ frame, meshes }, tell, lessons, full)
  const setup: ChoiceSetup = {
    printer: frame.printer,
    prices: frame.prices,
    materialOf: (id) => materialOf(frame, id),
  }
  const limits = givesLimitsOf({ frame, sum }, ask, named)
  const variable = sum.rows.flatMap(({ part }) => {
    const census = looks.get(part.id)?.census ?? null
    const isLocked = locked.has(part.id)
    if (census === null || (isLocked && !limits.has(part.id))) return []
    const variety = isLocked ? usualVariety(part, new Set()) : varietyOf(part, ask, plastics)
    return [{ part, census, variety }]
  })
  const workers = createWorkers()
  const { counted, models } = await (async () => {
    try {
      const all = await countWays(variable, meshes, frame.printer, full, onProgress, workers)
      const asks = { frame, loads, setup, meshes, runner: workers, onProgress }
      return { counted: all, models: await givesOfParts(limits, variable, all, asks) }
    } finally {
      workers.close()
    }
  })()
  const frameParts = priced.map(({ row }): FramePart => {
    const share = laid.shares.get(row.part.id)
    return share === undefined ? row : { ...row, share }
  })
  const carried = carriedLessons(lessons, frame.id)
  const parts = sum.rows.map((row): PartOptions => {
    const own = variable.find(({ part }) => part.id === row.part.id)
    const all = counted.get(row.part.id)
    if (own === undefined || all === undefined) return standing(row)
    const outline = looks.get(row.part.id)?.traits?.outline ?? null
    const { stiffnessOf } = layerStiffness(own.census, outline)
    const changed = rowOnceChanged(frameParts, frame, row, own.census, setup, carried)
    const givesOf = models.get(row.part.id)?.givesOf ?? null
    return partOptions(row, all, own.variety, setup, stiffnessOf, changed, givesOf)
  })
  const wants: Wants = { ceilings: ceilingsOf(ask, sum), floors, free, gives: limits }
  const wanted = asWanted(parts, wants)
  const front = wanted.some(({ options }) => options.length === 0)
    ? []
    : runToEnd(findFront(wanted, wants.ceilings), ({ partsDone, kept }) =>
        onProgress(`${partsDone} of ${parts.length} parts put together, ${kept} ways kept`),
      )
  const bindings = front.length === 0 ? runToEnd(whyNone(parts, wants)) : []
  const shown = thinFront(front, ask.most).map((one) => {
    const taken = new Map(parts.map(({ partId }, i) => [partId, one.options[i] as Option]))
    return { one, adopted: sumWith(frameParts, frame, taken, setup, carried) }
  })
  const now = parts.map(({ options }) => options[0] as Option)
  const asked = new Set(limits.keys())
  return {
    currency: frame.prices.currency,
    solutions: shown.map(({ one, adopted }) =>
      solutionOf(frame, sum, asked, one.options, one, adopted),
    ),
    massG: shown.map(({ adopted }) => adopted.printed.massG),
    count: front.length,
    now: solutionOf(frame, sum, asked, now, { stiffness: now.some(isAsked) ? 1 : Infinity }, sum),
    bindings,
    names: new Map(frame.parts.map(({ id, name }) => [id, name])),
    notes: sum.leftOut.map(({ name, weighed }) =>
      weighed
        ? `“${name}” stays as it was weighed: its layers are not counted.`
        : `“${name}” is left out: it has no figures.`,
    ),
  }
}

const isAsked = ({ stiffness }: Option): boolean => stiffness !== Infinity

function solutionOf(
  frame: Frame,
  sum: FrameSum,
  asked: ReadonlySet<string>,
  options: readonly Option[],
  { stiffness }: Pick<Assignment, 'stiffness'>,
  then: FrameSum,
): FoundSolution {
  const seen = new Set<string>()
  const names = sum.rows.map(({ part }) => {
    const name = seen.has(part.name)
      ? `${part.name}, item ${frame.parts.findIndex(({ id }) => id === part.id) + 1}`
      : part.name
    seen.add(name)
    return name
  })
  const gives = sum.rows.flatMap(({ part }, i) =>
    asked.has(part.id) ? [[names[i] ?? '', options[i]?.gives ?? null] as const] : [],
  )
  const recipes = sum.rows.map(({ part }, i): readonly [string, FoundRecipe] => {
    const name = names[i] ?? ''
    const { recipe, materialId: material } = options[i]?.way ?? part
    const { walls, topSkins, bottomSkins, infillPct, layerMm } = recipe
    return [name, { walls, topSkins, bottomSkins, infillPct, layerMm, material }]
  })
  return {
    massG: then.printed.massG.mid,
    hours: then.withSpares.timeS.mid / 3600,
    cost: then.withSpares.cost.mid,
    stiffness: stiffness === Infinity ? null : stiffness,
    ...(gives.length > 0 ? { gives: Object.fromEntries(gives) } : {}),
    recipes: Object.fromEntries(recipes),
  }
}

function ceilingsOf(ask: FindAsk, sum: FrameSum): Wants['ceilings'] {
  const { printedG, lessG, hours, cost } = ask
  const less = lessG === undefined ? undefined : sum.printed.massG.mid - lessG
  const massG = Math.min(printedG ?? Infinity, less ?? Infinity)
  return {
    ...(massG === Infinity ? {} : { massG }),
    ...(hours === undefined ? {} : { timeS: 3600 * hours }),
    ...(cost === undefined ? {} : { cost }),
  }
}

function floorsOf(
  frame: Frame,
  { stiffness }: FindAsk,
  named: (name: string) => readonly string[],
): ReadonlyMap<string, number> {
  if (stiffness === undefined) return new Map()
  if (typeof stiffness === 'number') return new Map(frame.parts.map(({ id }) => [id, stiffness]))
  return new Map(
    Object.entries(stiffness).flatMap(([name, least]) =>
      named(name).map((id): [string, number] => [id, least]),
    ),
  )
}

function varietyOf(part: Part, ask: FindAsk, plastics: readonly string[]): Variety {
  const keep = new Set<Setting>(ask.keepSettings ?? [])
  const free = new Set<Setting>(
    (['walls', 'skins', 'infill'] as const).filter((one) => !keep.has(one)),
  )
  const usual = usualVariety(part, free)
  return {
    walls: ask.walls ?? usual.walls,
    skins: ask.skins ?? usual.skins,
    infillPct: ask.infillPct ?? usual.infillPct,
    layerMm: ask.layerMm ?? usual.layerMm,
    materialIds: plastics.length > 0 ? plastics : usual.materialIds,
  }
}
