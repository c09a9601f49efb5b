import type { StoreApi } from 'zustand/vanilla'
import type { JointOffer } from '../../core/joints/offerJoints.ts'
import type { JointEnd } from '../../core/model/joints.ts'
import type { Runner } from '../../jobs/runner.ts'
import type { Meshes } from '../storage/meshes.ts'
import type { Actions, AppState } from '../store/types.ts'
import { takenAs } from './analysis.ts'

/** Looks for holes of the frame's parts that can meet; changes nothing. */
export function createJointOffers(
  store: StoreApi<AppState>,
  runner: Runner,
  meshes: Meshes,
): Pick<Actions, 'listJointOffers'> {
  return {
    async listJointOffers(signal) {
      const { parts } = store.getState().frame
      const found = await Promise.all(
        parts.map(async (part) => {
          const source = await meshes.find(part.meshHash, part.fileName)
          if (source === null) return null
          const { id: partId, unit, quantity: pieces } = part
          return { partId, unit, pieces, source: takenAs(source, part) }
        }),
      )
      const outcome = await runner.run(
        { kind: 'offers', parts: found.filter((each) => each !== null) },
        { signal },
      )
      return outcome.ok ? outcome.value.offers.filter(tellsAll) : null
    },
  }
}

/** Its holes and face alone say where b goes; of a shaft or of bare faces they do not. */
function tellsAll({ joint }: JointOffer): boolean {
  const hasFaces = ({ face }: JointEnd) => face !== null
  return (
    joint.kind === 'bores' && joint.a.bores.length > 1 && hasFaces(joint.a) && hasFaces(joint.b)
  )
}
