import type { StoreApi } from 'zustand/vanilla'
import type { PartZone } from '../../core/model/frame.ts'
import type { Problem } from '../../core/model/problem.ts'
import type { History } from './history.ts'
import { plainName, type Intake } from './intake.ts'
import type { Actions, AppState } from '../store/types.ts'

interface ZonesDeps {
  readonly store: StoreApi<AppState>
  readonly history: History
  readonly intake: Intake
}

/** Gives a part a zone, or takes it away. A file that cannot be one is told among the failures, and the part stays as it is. */
export function createZones({ store, history, intake }: ZonesDeps): Pick<Actions, 'setZone'> {
  function put(partId: string, zone: PartZone | null): void {
    const { frame } = store.getState()
    const part = frame.parts.find((each) => each.id === partId)
    if (part === undefined || part.zone?.meshHash === zone?.meshHash) return
    const label = `${zone === null ? 'remove the zone of' : 'give a zone to'} “${part.name}”`
    const parts = frame.parts.map((each) => (each === part ? { ...part, zone } : each))
    history.commit(label, { ...frame, parts })
  }

  return {
    async setZone(partId, file) {
      if (file === null) {
        put(partId, null)
        return
      }
      const found = await intake.open(file)
      const [opened] = found
      if (opened === undefined) return
      if (found.length > 1) {
        intake.fail([{ fileName: file.name, problem: tooMany(file.name, found.length) }])
        return
      }
      const { hash, name } = opened.source
      put(partId, { fileName: plainName(name), meshHash: hash })
    },
  }
}

function tooMany(name: string, count: number): Problem {
  return {
    code: 'bad-archive',
    message: `“${name}” holds ${count} meshes; a zone is one.`,
    advice: 'Choose one mesh file drawn in the part’s place.',
  }
}
