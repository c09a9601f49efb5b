import type { StoreApi } from 'zustand/vanilla'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import { PreweighError, type Problem } from '../../core/model/problem.ts'
import type { Part } from '../../core/model/frame.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import { censusKey, geometryOf, readKey } from '../../jobs/keys.ts'
import type { MeshSource } from '../../jobs/asks/fileAsks.ts'
import type { Runner } from '../../jobs/runner.ts'
import type { Counted } from '../store/counted.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'

interface PosesDeps {
  readonly store: StoreApi<AppState>
  readonly runner: Runner
  readonly counted: Counted
  /** Rejects where the part or its mesh is gone. */
  readonly meshOf: (
    id: string,
  ) => Promise<{ readonly source: MeshSource; readonly unit: LengthUnit }>
  /** Rejects where one is gone. */
  readonly findZones: (part: Part) => Promise<readonly MeshSource[]>
}

/**
 * Looks at ways to print a part before one is chosen. What is counted is kept, so that choosing it
 * shows figures at once.
 */
export function createPoses(deps: PosesDeps): Pick<Actions, 'listPoses' | 'tryRecipe'> {
  const { store, runner, counted, meshOf, findZones } = deps
  const partOf = (id: string) => store.getState().frame.parts.find((part) => part.id === id)

  return {
    async listPoses(id) {
      const { source, unit } = await meshOf(id)
      const supportAngleDeg = partOf(id)?.recipe.supportAngleDeg ?? 50
      const outcome = await runner.run({ kind: 'poses', source, unit, supportAngleDeg })
      if (outcome.ok) return outcome.value
      return refuse(outcome.problem)
    },
    async tryRecipe(id, patch, signal, lying) {
      const { source, unit } = await meshOf(id)
      const part = partOf(id)
      if (part === undefined) return null
      const pose = lying ?? part.pose
      const { printer } = store.getState().frame
      const geometry = geometryOf({ ...laidRecipe(part, printer), ...patch })
      const key = censusKey(
        source.hash,
        unit,
        pose,
        geometry,
        part.zones.map(({ meshHash }) => meshHash),
        part.keepsHairs,
        part.countsFully,
      )
      await counted.fetch(key, readKey(source.hash, unit, part.keepsHairs))
      const known = counted.census(key)
      if (known !== null) return known
      const zones = await findZones(part)
      const wants = {
        wantRead: false,
        wantCoarse: false,
        countsFully: part.countsFully === true,
      }
      const outcome = await runner.run(
        { kind: 'analyse', source, zones, unit, pose, geometry, ...wants },
        { signal },
      )
      if (signal.aborted) return null
      if (!outcome.ok) return refuse(outcome.problem)
      counted.keepCensus(key, outcome.value.census)
      return outcome.value.census
    },
  }
}

function refuse({ code, message, advice }: Problem): never {
  throw new PreweighError(code, message, advice)
}
