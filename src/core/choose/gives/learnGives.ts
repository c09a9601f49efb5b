import { acrossShareOf } from '../../data/acrossShares.ts'
import { laidRecipe } from '../../figures/laidRecipe.ts'
import { partFigures } from '../../figures/part.ts'
import type { FrameRow } from '../../frame/types.ts'
import type { Material } from '../../model/figures.ts'
import type { Recipe } from '../../model/settings.ts'
import type { NoBeam, PartSections } from '../../stiffness/part/sections.ts'
import type { StiffPart } from '../../stiffness/part/stiffPart.ts'
import type { ChoiceSetup, CountedGeometry } from '../partOptions.ts'
import type { GeometryPatch, Variety } from '../variety.ts'
import { beamGives, beamScale, geometryKey } from './beamGives.ts'
import { solidGives, type SolidAnchor } from './solidGives.ts'
import type { GivesBy, GivesLoad, GivesOf } from './types.ts'

/** What the pool is asked; null for what cannot be had. */
export interface GivesAsks {
  readonly sections: (patch: GeometryPatch) => Promise<PartSections | NoBeam | null>
  readonly solid: (
    way: { readonly patch: GeometryPatch; readonly infillPct: number; readonly material: Material },
    massG: number,
  ) => Promise<StiffPart | null>
}

/** How a part gives in each of its ways, by which model. */
export interface GivesModel {
  readonly by: GivesBy
  readonly givesOf: GivesOf
}

/**
 * Learns how a part gives in all ways whose layers were counted. Slender parts by their sections,
 * one look a geometry, scaled so that the part as it stands gives and rings as its solid model
 * does; others by solid sums of every geometry at the least, the present and the most infill. Null
 * where the part as it stands cannot be reckoned.
 *
 * @param onDone told after each answer of the pool: how many of how many, as far as is known.
 */
export async function learnGives(
  { part, material }: Pick<FrameRow, 'part' | 'material'>,
  counted: readonly CountedGeometry[],
  variety: Pick<Variety, 'infillPct' | 'materialIds'>,
  setup: ChoiceSetup,
  load: GivesLoad,
  asks: GivesAsks,
  onDone: (done: number, all: number) => void = () => undefined,
): Promise<GivesModel | null> {
  const { printer, prices } = setup
  const [present] = counted
  if (present === undefined) return null
  const lay = (recipe: Recipe) => laidRecipe({ recipe, zones: part.zones }, printer)
  const massOf = ({ patch, census }: CountedGeometry, infillPct: number, plastic: Material) => {
    const laid = lay({ ...part.recipe, ...patch, infillPct })
    return partFigures(census, laid, plastic, printer, prices).massG.mid
  }
  let done = 0
  let all = 1 + counted.length
  const noted = <T>(answer: T): T => {
    onDone((done += 1), all)
    return answer
  }
  const sumOf = async (one: CountedGeometry, infillPct: number, plastic: Material) => {
    const massG = massOf(one, infillPct, plastic)
    const { patch } = one
    const found = noted(await asks.solid({ patch, infillPct, material: plastic }, massG))
    return found === null ? null : anchorOf(found, infillPct, plastic, massG)
  }
  const now = await sumOf(present, part.recipe.infillPct, material)
  if (now === null) return null
  const keyOf = ({ patch }: CountedGeometry): string => geometryKey({ ...part.recipe, ...patch })
  const ownSections = noted(await asks.sections({}))
  const sections = new Map<string, PartSections>()
  if (ownSections?.kind === 'sections') {
    sections.set(keyOf(present), ownSections)
    const way = { recipe: part.recipe, material, massG: now.massG }
    const scale = beamScale(now, beamGives(sections, lay, load)(way))
    if (scale !== null) {
      await Promise.all(
        counted.slice(1).map(async (one) => {
          const found = noted(await asks.sections(one.patch))
          if (found?.kind === 'sections') sections.set(keyOf(one), found)
        }),
      )
      return { by: 'beam', givesOf: beamGives(sections, lay, load, scale) }
    }
  }
  const infills = anchorsOf(part.recipe.infillPct, variety.infillPct)
  const plastics = unlikeAcross([material, ...variety.materialIds.map(setup.materialOf)])
  // The part as it stands is known by now.
  const jobs = counted
    .flatMap((one) =>
      plastics.flatMap((plastic) => infills.map((infillPct) => ({ one, plastic, infillPct }))),
    )
    .filter(
      ({ one, plastic, infillPct }) =>
        one !== present || plastic !== material || infillPct !== part.recipe.infillPct,
    )
  all = done + jobs.length
  const anchors = new Map<string, SolidAnchor[]>([[keyOf(present), [now]]])
  await Promise.all(
    jobs.map(async ({ one, plastic, infillPct }) => {
      const found = await sumOf(one, infillPct, plastic)
      if (found === null) return
      const own = anchors.get(keyOf(one)) ?? []
      anchors.set(keyOf(one), own)
      own.push(found)
    }),
  )
  return { by: 'solid', givesOf: solidGives(anchors, load) }
}

function anchorOf(
  { figures: { deflectionMm, hz } }: StiffPart,
  infillPct: number,
  material: Material,
  massG: number,
): SolidAnchor {
  return {
    infillPct,
    acrossShare: acrossShareOf(material),
    youngsGPa: material.youngsGPa.value,
    massG,
    deflectionMm: deflectionMm.mid,
    firstHz: hz[0]?.mid ?? null,
  }
}

/** The least, the present and the most. */
function anchorsOf(now: number, others: readonly number[]): readonly number[] {
  const all = [now, ...others]
  return [...new Set([Math.min(...all), now, Math.max(...all)])]
}

/** One plastic of each softness across its layers; others of that softness scale with it. */
function unlikeAcross(materials: readonly Material[]): readonly Material[] {
  const byShare = new Map<number, Material>()
  for (const one of materials) {
    const share = acrossShareOf(one)
    if (!byShare.has(share)) byShare.set(share, one)
  }
  return [...byShare.values()]
}
