import type { ItemBody } from '../../core/model/aircraft.ts'
import type { StoreApi } from 'zustand/vanilla'
import type { Runner } from '../../jobs/runner.ts'
import type { Meshes } from '../storage/meshes.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'
import { takenAs } from './analysis.ts'
import type { LaidPiece } from './drawings.ts'

/**
 * Looks for holes of the frame's parts that can meet, for pieces in each other, for all holes;
 * changes nothing.
 */
export function createJointOffers(
  store: StoreApi<AppState>,
  runner: Runner,
  meshes: Meshes,
): Pick<
  Actions,
  'listJointOffers' | 'listWays' | 'listRepeats' | 'findClashes' | 'listSigns' | 'listHoles'
> {
  async function sourceOf(partId: string) {
    const { parts, aircraft } = store.getState().frame
    const part = parts.find(({ id }) => id === partId)
    if (part === undefined) {
      const body = aircraft.items.find(({ id }) => id === partId)?.body
      if (body === undefined) return null
      const { bodySource } = await import('./itemSources.ts')
      return { source: bodySource(body), unit: 'millimetre' as const }
    }
    const source = await meshes.find(part.meshHash, part.fileName)
    return source === null ? null : { source: takenAs(source, part), unit: part.unit }
  }

  interface Kind {
    readonly id: string
    readonly quantity: number
    readonly mirrored: number
    readonly body?: ItemBody
  }

  async function sourcesOf(kinds: readonly Kind[]) {
    const found = await Promise.all(
      kinds.map(async ({ id: partId, quantity: pieces, mirrored, body }) => {
        const known = await sourceOf(partId)
        const own = { partId, pieces, mirrored, ...(body === undefined ? {} : { body }) }
        return known === null ? [] : [{ ...own, ...known }]
      }),
    )
    return found.flat()
  }

  /** Null where one has no mesh, which is told of elsewhere. */
  async function piecesAt(laid: readonly LaidPiece[]) {
    const found = await Promise.all(
      laid.map(async ({ partId, motion }) => {
        const known = await sourceOf(partId)
        return known === null ? null : { ...known, motion }
      }),
    )
    const there = found.filter((each) => each !== null)
    return there.length < found.length ? null : there
  }

  async function itemKinds(): Promise<readonly Kind[]> {
    const { items } = store.getState().frame.aircraft
    if (items.every(({ body }) => body === undefined)) return []
    const { itemPieces } = await import('../../core/joints/itemPieces.ts')
    return itemPieces(items)
  }

  const partKinds = (): readonly Kind[] => store.getState().frame.parts

  return {
    async listJointOffers(signal) {
      const parts = await sourcesOf([...partKinds(), ...(await itemKinds())])
      const outcome = await runner.run({ kind: 'offers', parts }, { signal })
      return outcome.ok ? outcome.value : null
    },
    async listWays(ask, signal) {
      const outcome = await runner.run({ kind: 'ways', ...ask }, { signal })
      return outcome.ok ? outcome.value.ways : null
    },
    async listRepeats(ask, signal) {
      const outcome = await runner.run({ kind: 'repeats', ...ask }, { signal })
      return outcome.ok ? outcome.value.repeats : null
    },
    async findClashes(laid, pairs, signal) {
      const pieces = await piecesAt(laid)
      if (pieces === null) return null
      const outcome = await runner.run({ kind: 'clashes', pieces, pairs }, { signal })
      return outcome.ok ? outcome.value.shared.map(({ volumeMm3 }) => volumeMm3) : null
    },
    async listSigns(signal) {
      const { parts, aircraft } = store.getState().frame
      const [{ clashAsk }, { frameSigns }, { spaceSource }] = await Promise.all([
        import('../../core/aircraft/report/clashFindings.ts'),
        import('../../core/aircraft/report/frameSigns.ts'),
        import('./itemSources.ts'),
      ])
      const ask = clashAsk(parts, aircraft)
      const pieces = await piecesAt(ask.standing)
      if (pieces === null) return null
      const screws = ask.spaces.map((space) => ({
        ...spaceSource(space),
        unit: 'millimetre' as const,
      }))
      const outcome = await runner.run(
        { kind: 'clashes', pieces: [...pieces, ...screws], pairs: ask.pairs },
        { signal },
      )
      return outcome.ok ? frameSigns(ask, outcome.value.shared, parts, aircraft) : null
    },
    async listHoles(signal) {
      const outcome = await runner.run(
        { kind: 'holes', parts: await sourcesOf(partKinds()) },
        { signal },
      )
      return outcome.ok ? outcome.value : null
    },
  }
}
