import { learnGives, type GivesModel } from '../core/choose/gives/learnGives.ts'
import type { GivesLimit } from '../core/choose/gives/types.ts'
import type { ChoiceSetup, CountedGeometry } from '../core/choose/partOptions.ts'
import { clearOfTurnsHz } from '../core/aircraft/report/clearOfTurns.ts'
import { loadOf, type LoadNow, type TypedLoads } from '../core/aircraft/twin/loadOf.ts'
import { DRAFT_MM } from '../core/data/stiffness.ts'
import { laidRecipe } from '../core/figures/laidRecipe.ts'
import type { FrameSum } from '../core/frame/types.ts'
import type { Frame, Part } from '../core/model/frame.ts'
import type { Recipe } from '../core/model/settings.ts'
import { geometryOf } from '../jobs/keys.ts'
import type { Runner } from '../jobs/runner.ts'
import { sourceOf, type CountedPart } from './countWays.ts'
import type { FindAsk } from './findOptions.ts'
import { UsageError } from './usage.ts'

/** What is asked of how parts give, by part id. Throws UsageError for turns that nobody knows. */
export function givesLimitsOf(
  { frame, sum }: { readonly frame: Frame; readonly sum: FrameSum },
  { deflectionMm = {}, firstHz = {} }: FindAsk,
  named: (name: string) => readonly string[],
): ReadonlyMap<string, GivesLimit> {
  const limits = new Map<string, GivesLimit>()
  const add = (name: string, limit: GivesLimit): void => {
    for (const id of named(name)) limits.set(id, { ...limits.get(id), ...limit })
  }
  for (const [name, most] of Object.entries(deflectionMm)) add(name, { deflectionMm: most })
  for (const [name, least] of Object.entries(firstHz)) {
    add(name, { firstHz: least === 'turns' ? turnsOf(frame, sum) : least })
  }
  return limits
}

function turnsOf({ aircraft }: Frame, { allUpG }: FrameSum): number {
  const turnsHz = clearOfTurnsHz(aircraft, allUpG.mid)
  if (turnsHz === null) {
    throw new UsageError(
      '--find: firstHz is "turns", but the frame says nothing of motors and propeller. ' +
        'Type them on its Aircraft sheet, or give a number of Hz.',
    )
  }
  return turnsHz
}

interface GivesPlace {
  readonly frame: Frame
  readonly loads: TypedLoads
  readonly setup: ChoiceSetup
  readonly meshes: ReadonlyMap<string, Uint8Array>
  readonly runner: Runner
  readonly onProgress: (text: string) => void
}

/** How each part that is asked gives in its ways; a part that cannot be reckoned is left out. */
export async function givesOfParts(
  asked: ReadonlyMap<string, GivesLimit>,
  variable: readonly CountedPart[],
  counted: ReadonlyMap<string, readonly CountedGeometry[]>,
  { frame, loads, setup, meshes, runner, onProgress }: GivesPlace,
): Promise<ReadonlyMap<string, GivesModel>> {
  const models = new Map<string, GivesModel>()
  for (const { part, variety } of variable) {
    if (!asked.has(part.id)) continue
    const load = loadOf(part, frame.aircraft, loads.get(part.id))
    const common = commonAsk(part, load, meshes)
    const recipeOf = (changed: Partial<Recipe>) =>
      laidRecipe({ ...part, recipe: { ...part.recipe, ...changed } }, frame.printer)
    const material = setup.materialOf(part.materialId)
    const model = await learnGives(
      { part, material },
      counted.get(part.id) ?? [],
      variety,
      setup,
      load,
      {
        async sections(patch) {
          const geometry = geometryOf(recipeOf(patch))
          const outcome = await runner.run({ kind: 'sections', ...common, geometry })
          return outcome.ok ? outcome.value : null
        },
        async solid({ patch, infillPct, material: plastic }, massG) {
          const { loadN, tipG } = load
          const outcome = await runner.run({
            kind: 'stiff',
            ...common,
            recipe: recipeOf({ ...patch, infillPct }),
            material: plastic,
            massG,
            loadN,
            tipG,
            cellMm: DRAFT_MM,
            wantTones: true,
          })
          return outcome.ok ? outcome.value : null
        },
      },
      (done, all) => onProgress(`${part.name}: how it gives, ${done} of ${all}`),
    )
    if (model !== null) models.set(part.id, model)
  }
  return models
}

function commonAsk(
  part: Part,
  { pick, jointBores }: LoadNow,
  meshes: ReadonlyMap<string, Uint8Array>,
) {
  const { meshHash, fileName, unit, pose, zones, keepsHairs } = part
  return {
    source: sourceOf(meshHash, fileName, meshes, keepsHairs),
    zones: zones.map((zone) => sourceOf(zone.meshHash, zone.fileName, meshes)),
    unit,
    pose,
    jointBores,
    pick,
  }
}
