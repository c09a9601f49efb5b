import type { StoreApi } from 'zustand/vanilla'
import type { Motion } from '../../core/drawing/types.ts'
import type { Aircraft } from '../../core/model/aircraft.ts'
import type { RigidMap } from '../../core/mesh/rigidMaps.ts'
import type { Vec3 } from '../../core/model/mesh.ts'
import { unitToMm } from '../../core/model/units.ts'
import type { BoughtDrawPart, DrawAnswer, DrawAsk, DrawPart } from '../../jobs/asks/frameAsks.ts'
import type { Runner } from '../../jobs/runner.ts'
import { takenAs } from './analysis.ts'
import type { Meshes } from '../storage/meshes.ts'
import type { AppState } from '../store/types.ts'

/** Of a part of many loose pieces so many are drawn; the list says how many there are. */
const MOST_LOOSE = 8

export type DrawView = Pick<DrawAsk, 'view' | 'sheet' | 'apart' | 'samples'> & {
  /** Leaves out what has no place yet; it stands in rows otherwise. */
  readonly placedOnly?: boolean
  /** These in place of what stands, and nothing loose. */
  readonly laid?: readonly LaidPiece[]
  /** Draws the bodies of bought things, too; those in `laid` and `ghosts` are drawn in any case. */
  readonly withBought?: boolean
  /** Drawn apart from all that is there. */
  readonly ghosts?: readonly LaidPiece[]
}

/** A piece of a part or of a bought thing, and where its mesh goes on the aircraft. mm */
export interface LaidPiece {
  readonly partId: string
  readonly motion: RigidMap
  /**
   * Steps it goes when all is drawn apart, in the frame's axes; null or left out, away from the
   * middle.
   */
  readonly way?: Vec3 | null
}

/** Draws the present frame; null when the worker could not. */
export type DrawFrame = (view: DrawView) => Promise<DrawAnswer | null>

export function createDrawFrame(
  store: StoreApi<AppState>,
  runner: Runner,
  meshes: Meshes,
): DrawFrame {
  return async ({ placedOnly = false, withBought = false, laid, ghosts = [], ...view }) => {
    const { parts, aircraft } = store.getState().frame
    // Not in the first load: nothing is drawn before the sheet that shows it is there.
    const [{ framePlaces }, { standingPieces }, { wayApart }, { pieceKey }] = await Promise.all([
      import('../../core/joints/framePlaces.ts'),
      import('../../core/joints/standingPieces.ts'),
      import('../../core/joints/wayApart.ts'),
      import('../../core/joints/placePieces.ts'),
    ])
    const placed = framePlaces(parts, aircraft)
    const ways = wayApart(aircraft.joints, placed.motions)
    const bodied = await bodiedHere(aircraft)
    const standing: readonly LaidPiece[] =
      laid ??
      standingPieces([...parts, ...(withBought ? bodied : [])], placed).map((piece) => ({
        partId: piece.partId,
        motion: piece.motion,
        way: ways.get(pieceKey(piece)) ?? null,
      }))
    const drawn: DrawPart[] = []
    const apart: DrawPart[] = []
    const left: string[] = []
    for (const part of parts) {
      const { id, meshHash, fileName, unit, quantity } = part
      const ownOf = (pieces: readonly LaidPiece[]) =>
        pieces.filter(({ partId }) => partId === id).slice(0, quantity)
      const motionsOf = (pieces: readonly LaidPiece[]) =>
        ownOf(pieces).map(({ motion }) => inMm(motion, unitToMm(unit)))
      const [motions, own] = [motionsOf(standing), motionsOf(ghosts)]
      const isLeftOut = placedOnly || laid !== undefined
      const looseCount = isLeftOut ? 0 : Math.min(MOST_LOOSE, quantity - motions.length)
      if (isLeftOut && motions.length + own.length === 0) continue
      const source = await meshes.find(meshHash, fileName)
      if (source === null) {
        left.push(id)
        continue
      }
      const common = { item: id, source: takenAs(source, part), unit }
      drawn.push({
        ...common,
        motions,
        ways: ownOf(standing).map(({ way = null }) => way),
        looseCount,
      })
      if (own.length > 0) apart.push({ ...common, motions: own, looseCount: 0 })
    }
    const bought: BoughtDrawPart[] = []
    for (const { id, source, body } of bodied) {
      const own = standing.filter(({ partId }) => partId === id)
      const ghostly = ghosts.filter(({ partId }) => partId === id)
      const common = { item: id, source, unit: 'millimetre', looseCount: 0 } as const
      const isSwept = body.kind === 'prop'
      const mapsOf = (pieces: readonly LaidPiece[]) => pieces.map(({ motion }) => inMm(motion, 1))
      const ownWays = own.map(({ way = null }) => way)
      if (own.length > 0) bought.push({ ...common, motions: mapsOf(own), ways: ownWays, isSwept })
      if (ghostly.length > 0) apart.push({ ...common, motions: mapsOf(ghostly) })
    }
    const outcome = await runner.run({ kind: 'draw', parts: drawn, ghosts: apart, bought, ...view })
    return outcome.ok ? { ...outcome.value, left: [...left, ...outcome.value.left] } : null
  }
}

/** Bought things with a body, and the files that workers take for their meshes. */
async function bodiedHere({ items }: Pick<Aircraft, 'items'>) {
  if (items.every(({ body }) => body === undefined)) return []
  const [{ itemPieces }, { bodySource }] = await Promise.all([
    import('../../core/joints/itemPieces.ts'),
    import('./itemSources.ts'),
  ])
  return itemPieces(items).map((each) => ({ ...each, source: bodySource(each.body) }))
}

/** What a map does to the points of a mesh that is drawn in a unit of so many mm. */
function inMm({ matrix, move }: RigidMap, mm: number): Motion {
  const [a, b, c, d, e, f, g, h, i] = matrix
  const [x, y, z] = move
  return [mm * a, mm * b, mm * c, x, mm * d, mm * e, mm * f, y, mm * g, mm * h, mm * i, z]
}
