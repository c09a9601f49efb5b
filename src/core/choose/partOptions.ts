import { laidRecipe } from '../figures/laidRecipe.ts'
import { partFigures } from '../figures/part.ts'
import type { FrameRow } from '../frame/types.ts'
import type { Census } from '../model/census.ts'
import type { PartWay } from '../model/frame.ts'
import type { Material, PartFigures, Prices, Printer } from '../model/figures.ts'
import type { Gives, GivesOf } from './gives/types.ts'
import type { CountedWay, StiffnessOf } from './layerStiffness.ts'
import type { Option, PartOptions, Worth } from './types.ts'
import { sameAs } from './whatIfAxes.ts'
import { waysWith, type GeometryPatch, type Variety } from './variety.ts'

/** What figures of a part's ways are made with. */
export interface ChoiceSetup {
  readonly printer: Printer
  readonly prices: Prices
  /** Throws for none; asked for allowed materials only. */
  readonly materialOf: (id: string) => Material
}

/** Layers counted for one change of the recipe. */
export interface CountedGeometry {
  readonly patch: GeometryPatch
  readonly census: Census
}

/** One piece printed a way, and what it then does to the frame. */
export interface TriedWay extends Worth {
  readonly figures: PartFigures
  /** Null where no model of the part tells it. */
  readonly gives: Gives | null
}

/**
 * Prices ways of one part as the frame does: all its pieces, by what scale and clock taught and by
 * what the print runs, as they lie, make of its hours and money. The part
 * as it stands comes out to the digit as the frame has it; of one that was weighed, other ways by
 * what the scale says of `changed`, its row once the recipe is another. Where a model tells how the
 * part gives, its stiffness is by that model.
 */
export function createPricer(
  row: Pick<FrameRow, 'part' | 'material' | 'flying' | 'withSpares'>,
  present: Census,
  setup: ChoiceSetup,
  stiffnessOf: StiffnessOf,
  changed: FrameRow | null,
  givesOf: GivesOf | null = null,
): (census: Census, way: PartWay) => TriedWay {
  const { part, material, flying, withSpares } = row
  const { printer, prices } = setup
  const figuresOf = (census: Census, way: PartWay, plastic: Material): PartFigures =>
    partFigures(
      census,
      laidRecipe({ recipe: way.recipe, zones: part.zones }, printer),
      plastic,
      printer,
      prices,
    )
  const now = figuresOf(present, part, material)
  const massNow = over(flying.massG.mid, now.massG.mid)
  const massThen =
    changed === null || changed.figures === null
      ? massNow
      : over(changed.flying.massG.mid, changed.figures.massG.mid)
  const time = over(withSpares.timeS.mid, now.timeS.mid)
  const cost = over(withSpares.cost.mid, now.cost.mid)
  const stiffNow = stiffnessOf({ census: present, recipe: part.recipe, material })
  const givesIn = (
    one: Pick<CountedWay, 'recipe' | 'material'>,
    figures: PartFigures,
  ): Gives | null =>
    givesOf?.({ recipe: one.recipe, material: one.material, massG: figures.massG.mid }) ?? null
  const givesNow = givesIn({ recipe: part.recipe, material }, now)
  return (census, way) => {
    const plastic = setup.materialOf(way.materialId)
    const figures = figuresOf(census, way, plastic)
    const one = { census, recipe: way.recipe, material: plastic }
    const stiff = stiffnessOf(one)
    const gives = givesIn(one, figures)
    return {
      figures,
      massG: figures.massG.mid * (sameAs(part, way) ? massNow : massThen),
      timeS: figures.timeS.mid * time,
      cost: figures.cost.mid * cost,
      stiffness:
        gives !== null && givesNow !== null
          ? givesNow.deflectionMm / gives.deflectionMm
          : stiff === null || stiffNow === null
            ? Infinity
            : stiff / stiffNow,
      gives,
    }
  }
}

/** What one piece's figures are multiplied by to be the part's in the frame. */
const over = (sum: number, one: number): number => (one > 0 ? sum / one : 0)

/** All ways of a part whose layers were counted; `counted` begins with the part as it stands. */
export function partOptions(
  row: Pick<FrameRow, 'part' | 'material' | 'flying' | 'withSpares'>,
  counted: readonly CountedGeometry[],
  variety: Variety,
  setup: ChoiceSetup,
  stiffnessOf: StiffnessOf,
  changed: FrameRow | null = null,
  givesOf: GivesOf | null = null,
): PartOptions {
  const [present] = counted
  if (present === undefined) return standing(row)
  const price = createPricer(row, present.census, setup, stiffnessOf, changed, givesOf)
  const options = counted.flatMap(({ patch, census }) =>
    waysWith(row.part, patch, variety).map((way): Option => {
      const { massG, timeS, cost, stiffness, gives } = price(census, way)
      const worth = { massG, timeS, cost, stiffness, way, census }
      return gives === null ? worth : { ...worth, gives }
    }),
  )
  return { partId: row.part.id, options }
}

/** A part that stays as it is. Nobody asks for its stiffness: it does not change. */
export function standing({
  part,
  flying,
  withSpares,
}: Pick<FrameRow, 'part' | 'flying' | 'withSpares'>): PartOptions {
  const { recipe, materialId } = part
  const option = {
    massG: flying.massG.mid,
    timeS: withSpares.timeS.mid,
    cost: withSpares.cost.mid,
    stiffness: Infinity,
    way: { recipe, materialId },
    census: null,
  }
  return { partId: part.id, options: [option] }
}
