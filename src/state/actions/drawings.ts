import type { StoreApi } from 'zustand/vanilla'
import type { Motion } from '../../core/drawing/types.ts'
import { turnMatrix } from '../../core/mesh/pose.ts'
import type { Place } from '../../core/model/aircraft.ts'
import { unitToMm } from '../../core/model/units.ts'
import type { DrawAnswer, DrawAsk, DrawPart } from '../../jobs/protocol.ts'
import type { Runner } from '../../jobs/runner.ts'
import { takenAs } from './analysis.ts'
import type { Meshes } from '../storage/meshes.ts'
import type { AppState } from '../store/types.ts'

/** Of a part of many loose pieces so many are drawn; the list says how many there are. */
const MOST_LOOSE = 8

export type DrawView = Pick<DrawAsk, 'view' | 'sheet' | 'apart' | 'samples'> & {
  /** Leaves out what has no place yet; it stands in rows otherwise. */
  readonly placedOnly?: boolean
}

/** Draws the present frame; null when the worker could not. */
export type DrawFrame = (view: DrawView) => Promise<DrawAnswer | null>

export function createDrawFrame(
  store: StoreApi<AppState>,
  runner: Runner,
  meshes: Meshes,
): DrawFrame {
  return async ({ placedOnly = false, ...view }) => {
    const { parts, aircraft } = store.getState().frame
    // Not in the first load: nothing is drawn before the sheet that shows it is there.
    const { framePlaces } = await import('../../core/joints/framePlaces.ts')
    const { places: all } = framePlaces(parts, aircraft)
    const drawn: DrawPart[] = []
    const left: string[] = []
    for (const part of parts) {
      const { id, meshHash, fileName, unit, quantity } = part
      const source = await meshes.find(meshHash, fileName)
      if (source === null) {
        left.push(id)
        continue
      }
      const places = all.filter(({ partId }) => partId === id).slice(0, quantity)
      drawn.push({
        item: id,
        source: takenAs(source, part),
        unit,
        motions: places.map((place) => motionOf(place, unitToMm(unit))),
        looseCount: placedOnly ? 0 : Math.min(MOST_LOOSE, quantity - places.length),
      })
    }
    const outcome = await runner.run({ kind: 'draw', parts: drawn, ...view })
    return outcome.ok ? { ...outcome.value, left: [...left, ...outcome.value.left] } : null
  }
}

/** What a place does to the points of a mesh: mirrored in x, turned about x, y, z, moved. */
function motionOf(
  { positionMm, rotateDeg, mirrored }: Pick<Place, 'positionMm' | 'rotateDeg' | 'mirrored'>,
  mm: number,
): Motion {
  const [a, b, c, d, e, f, g, h, i] = turnMatrix({ rotateDeg }).map((value) => value * mm) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  const side = mirrored ? -1 : 1
  const [x, y, z] = positionMm
  return [side * a, b, c, x, side * d, e, f, y, side * g, h, i, z]
}
