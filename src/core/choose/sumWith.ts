import type { Lesson } from '../doubt/lessons.ts'
import { laidRecipe } from '../figures/laidRecipe.ts'
import { partFigures } from '../figures/part.ts'
import type { FramePart, FrameRow, FrameSum } from '../frame/types.ts'
import { weighFrame } from '../frame/weighFrame.ts'
import type { Census } from '../model/census.ts'
import type { PartFigures, Range } from '../model/figures.ts'
import type { Frame } from '../model/frame.ts'
import { scaleRange } from '../model/ranges.ts'
import type { PieceShare } from '../model/runs.ts'
import type { ChoiceSetup } from './partOptions.ts'
import type { Option } from './types.ts'

/**
 * The frame added up as it is with these options taken, by the one sum that everything shows:
 * grams, hours and money with their ranges, the latter two as the print runs lie. Where the scale
 * weighed a part that an option changes, this hears less of the scale than the frame that stands,
 * and may differ from the sum of the options by what that taught.
 */
export function sumWith(
  parts: readonly FramePart[],
  frame: Pick<Frame, 'aircraft' | 'carbon' | 'printer' | 'wholes' | 'clocks'>,
  taken: ReadonlyMap<string, Option>,
  setup: ChoiceSetup,
  lessons: readonly Lesson[] = [],
): FrameSum {
  const { printer, prices, materialOf } = setup
  const then = parts.map((one): FramePart => {
    const option = taken.get(one.part.id)
    if (option === undefined || option.census === null) return one
    const { way, census } = option
    const part = { ...one.part, ...way }
    const material = materialOf(way.materialId)
    const figures = partFigures(census, laidRecipe(part, printer), material, printer, prices)
    const { share } = one
    if (share === undefined || one.figures === null) return { ...one, part, material, figures }
    return { ...one, part, material, figures, share: scaleShare(share, one.figures, figures) }
  })
  return weighFrame(then, frame, lessons)
}

/**
 * A piece's hours and money in the print runs as they lie, for another way to print it: they go
 * with those of the piece by itself. How runs would be laid then is not asked.
 */
function scaleShare(
  { timeS, timeDoubt, cost, costDoubt }: PieceShare,
  now: PartFigures,
  then: PartFigures,
): PieceShare {
  const by = (a: Range, b: Range): number => (a.mid > 0 ? b.mid / a.mid : 1)
  return {
    timeS: scaleRange(timeS, by(now.timeS, then.timeS)),
    timeDoubt,
    cost: scaleRange(cost, by(now.cost, then.cost)),
    costDoubt,
  }
}

/**
 * The row of a part that its builder weighed, once its recipe is another: the scale then says less
 * of it, or nothing. Null where nobody weighed it, and nothing changes.
 */
export function rowOnceChanged(
  parts: readonly FramePart[],
  frame: Parameters<typeof sumWith>[1],
  { part }: Pick<FrameRow, 'part'>,
  census: Census,
  setup: ChoiceSetup,
  lessons: readonly Lesson[] = [],
): FrameRow | null {
  if (part.weighIn === undefined) return null
  const { recipe, materialId } = part
  const infillPct = recipe.infillPct >= 1 ? recipe.infillPct - 1 : 1
  const way = { recipe: { ...recipe, infillPct }, materialId }
  const option = { massG: 0, timeS: 0, cost: 0, stiffness: 1, way, census }
  const sum = sumWith(parts, frame, new Map([[part.id, option]]), setup, lessons)
  return sum.rows.find((row) => row.part.id === part.id) ?? null
}
