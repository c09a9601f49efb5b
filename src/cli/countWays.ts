import { availableParallelism } from 'node:os'
import type { CountedGeometry } from '../core/choose/partOptions.ts'
import { geometriesOf, type Variety } from '../core/choose/variety.ts'
import { laidRecipe } from '../core/figures/laidRecipe.ts'
import type { Census } from '../core/model/census.ts'
import type { Part } from '../core/model/frame.ts'
import type { Printer } from '../core/model/figures.ts'
import { geometryOf } from '../jobs/keys.ts'
import { createPoolRunner } from '../jobs/poolRunner.ts'
import type { Runner } from '../jobs/runner.ts'
import type { MeshSource } from '../jobs/asks/fileAsks.ts'
import { nodeWorkers } from './nodeWorkers.ts'

/** A part whose ways are to be counted; its present count is there. */
export interface CountedPart {
  readonly part: Part
  readonly census: Census
  readonly variety: Variety
}

/** Workers on all cores; whoever asks for them closes them. */
export function createWorkers(): Runner {
  return createPoolRunner({
    spawn: nodeWorkers(new URL('./countWorker.mjs', import.meta.url)),
    cores: availableParallelism(),
  })
}

/**
 * Counts the layers of all ways of all parts. What cannot be counted is left out: the
 * part's own count told what is wrong with it.
 */
export async function countWays(
  parts: readonly CountedPart[],
  meshes: ReadonlyMap<string, Uint8Array>,
  printer: Printer,
  full: boolean,
  onProgress: (text: string) => void,
  runner: Runner,
): Promise<ReadonlyMap<string, readonly CountedGeometry[]>> {
  const plans = parts.map(({ part, variety }) => geometriesOf(part.recipe, variety))
  const all = plans.reduce((sum, patches) => sum + patches.length - 1, 0)
  let done = 0
  const countOne = async (part: Part, patch: CountedGeometry['patch']) => {
    const outcome = await runner.run({
      kind: 'analyse',
      source: sourceOf(part.meshHash, part.fileName, meshes, part.keepsHairs),
      zones: part.zones.map(({ meshHash, fileName }) => sourceOf(meshHash, fileName, meshes)),
      unit: part.unit,
      pose: part.pose,
      geometry: geometryOf({ ...laidRecipe(part, printer), ...patch }),
      wantRead: false,
      wantCoarse: false,
      countsFully: full || part.countsFully === true,
    })
    onProgress(`layers counted ${(done += 1)} of ${all} times`)
    return outcome.ok ? [{ patch, census: outcome.value.census }] : []
  }
  const counted = await Promise.all(
    parts.map(async ({ part, census }, i) => {
      const [, ...others] = plans[i] ?? []
      const found = await Promise.all(others.map((patch) => countOne(part, patch)))
      return [part.id, [{ patch: {}, census }, ...found.flat()]] as const
    }),
  )
  return new Map(counted)
}

/** Of the frame's meshes. */
export function sourceOf(
  hash: string,
  name: string,
  meshes: ReadonlyMap<string, Uint8Array>,
  keepsHairs = false,
): MeshSource {
  const bytes = meshes.get(hash) ?? new Uint8Array()
  return { hash, name, blob: new Blob([Uint8Array.from(bytes)]), keepsHairs }
}
