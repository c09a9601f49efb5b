import type { StoreApi } from 'zustand/vanilla'
import { ZONE_PCT_DEFAULT, ZONES_MOST } from '../../core/data/limits.ts'
import type { PartZone } from '../../core/model/frame.ts'
import type { Problem } from '../../core/model/problem.ts'
import type { History } from './history.ts'
import { plainName, type Intake } from './intake.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'

interface ZonesDeps {
  readonly store: StoreApi<AppState>
  readonly history: History
  readonly intake: Intake
}

/**
 * Gives a part zones and takes them away. A file that cannot be one is told among the failures, and
 * the others go on.
 */
export function createZones({
  store,
  history,
  intake,
}: ZonesDeps): Pick<Actions, 'addZones' | 'dropZone' | 'lowerZone' | 'setZonePct'> {
  function edit(
    partId: string,
    words: string,
    change: (zones: readonly PartZone[]) => readonly PartZone[],
  ): void {
    const { frame } = store.getState()
    const part = frame.parts.find((each) => each.id === partId)
    if (part === undefined) return
    const zones = change(part.zones)
    if (zones === part.zones) return
    const parts = frame.parts.map((each) => (each === part ? { ...part, zones } : each))
    history.commit(`${words} “${part.name}”`, { ...frame, parts })
  }

  return {
    async addZones(partId, files) {
      const found: PartZone[] = []
      for (const file of files) {
        const opened = await intake.open(file)
        const [one] = opened
        if (one === undefined) continue
        if (opened.length > 1) {
          intake.fail([{ fileName: file.name, problem: tooMany(file.name, opened.length) }])
          continue
        }
        const { hash, name } = one.source
        const zone = {
          fileName: plainName(name),
          meshHash: hash,
          infillPct: ZONE_PCT_DEFAULT,
        }
        found.push(zone)
      }
      const fresh: PartZone[] = []
      const present = store.getState().frame.parts.find(({ id }) => id === partId)?.zones ?? []
      for (const zone of found) {
        const problem = whyNotAlso(zone, [...present, ...fresh])
        if (problem === null) fresh.push(zone)
        else intake.fail([{ fileName: zone.fileName, problem }])
      }
      if (fresh.length === 0) return
      const words = fresh.length === 1 ? 'give a zone to' : `give ${fresh.length} zones to`
      edit(partId, words, (zones) => [...zones, ...fresh])
    },
    dropZone(partId, meshHash) {
      edit(partId, 'take a zone from', (zones) => {
        const left = zones.filter((zone) => zone.meshHash !== meshHash)
        return left.length === zones.length ? zones : left
      })
    },
    lowerZone(partId, meshHash) {
      edit(partId, 'reorder the zones of', (zones) => {
        const at = zones.findIndex((zone) => zone.meshHash === meshHash)
        const [zone, next] = zones.slice(at, at + 2)
        if (at < 0 || zone === undefined || next === undefined) return zones
        return zones.toSpliced(at, 2, next, zone)
      })
    },
    setZonePct(partId, meshHash, infillPct) {
      edit(partId, 'change the infill in a zone of', (zones) => {
        const at = zones.findIndex((zone) => zone.meshHash === meshHash)
        const zone = zones[at]
        if (zone === undefined || zone.infillPct === infillPct) return zones
        return zones.with(at, { ...zone, infillPct })
      })
    },
  }
}

function whyNotAlso(zone: PartZone, zones: readonly PartZone[]): Problem | null {
  if (zones.some(({ meshHash }) => meshHash === zone.meshHash)) {
    return {
      code: 'bad-archive',
      message: `“${zone.fileName}” is a zone of this part already.`,
      advice: 'Change the infill of the zone that is there.',
    }
  }
  if (zones.length < ZONES_MOST) return null
  return {
    code: 'bad-archive',
    message: `“${zone.fileName}” would be zone ${zones.length + 1}; a part has ${ZONES_MOST} at most.`,
    advice: 'Draw zones of one infill together, as one mesh of several bodies.',
  }
}

function tooMany(name: string, count: number): Problem {
  return {
    code: 'bad-archive',
    message: `“${name}” holds ${count} meshes; a zone is one.`,
    advice: 'Choose one mesh file drawn in the part’s place.',
  }
}
