import type { StoreApi } from 'zustand/vanilla'
import type { DrawnPlace } from '../../core/model/aircraft.ts'
import type { nestPlaces } from '../../core/mesh/split/drawnPlace.ts'
import { MOST_PIECES } from '../../core/mesh/split/findPieces.ts'
import type { handOverJoints } from '../../core/joints/handOverJoints.ts'
import type { BoreMark } from '../../core/model/joints.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import type { Frame, Part } from '../../core/model/frame.ts'
import type { MeshSource, SplitAsk, SplitPiece } from '../../jobs/asks/fileAsks.ts'
import type { Runner } from '../../jobs/runner.ts'
import { freeName } from './edits.ts'
import type { History } from './history.ts'
import { plainName } from './intake.ts'
import type { Meshes } from '../storage/meshes.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'

/** Bores of each piece, and what hands joints over by them. */
interface FoundBores {
  readonly bores: readonly (readonly BoreMark[])[]
  readonly handOverJoints: typeof handOverJoints
}

interface ReshapeDeps {
  readonly store: StoreApi<AppState>
  readonly runner: Runner
  readonly history: History
  readonly meshes: Meshes
  readonly newId: () => string
  /** Rejects where the part or its mesh is gone. */
  readonly meshOf: (
    id: string,
  ) => Promise<{ readonly source: MeshSource; readonly unit: LengthUnit }>
}

/**
 * Actions that give a part another mesh, made from its own. Both are one undo step; the file as
 * dropped stays as it was.
 */
export function createReshape(deps: ReshapeDeps): Pick<Actions, 'splitPlate' | 'dropSpecks'> {
  const { store, runner, history, meshes } = deps

  function say(text: string): void {
    store.setState({ notice: { text, canUndo: false } })
  }

  /**
   * The new pieces and the part as it is once they are there; null where something went wrong,
   * which was then said.
   */
  async function splitUp(
    id: string,
    how: SplitAsk['how'],
  ): Promise<{ part: Part; pieces: readonly SplitPiece[]; nest: typeof nestPlaces } | null> {
    try {
      const { source, unit } = await deps.meshOf(id)
      const outcome = await runner.run({ kind: 'split', source, unit, how })
      // Not in the first load: few parts are taken apart.
      const { nestPlaces: nest } = await import('../../core/mesh/split/drawnPlace.ts')
      if (!outcome.ok) {
        say(`${outcome.problem.message} ${outcome.problem.advice}`)
        return null
      }
      const part = store.getState().frame.parts.find((each) => each.id === id)
      // Taken out or given another mesh meanwhile.
      if (part?.meshHash !== source.hash) return null
      for (const piece of outcome.value.pieces) meshes.add(piece.source, piece.raw)
      return { part, pieces: outcome.value.pieces, nest }
    } catch (error) {
      say(error instanceof Error ? error.message : String(error))
      return null
    }
  }

  /** What the joints of a part go on by: the bores of each piece, where any joint is. */
  async function boresOf(part: Part, pieces: readonly SplitPiece[]): Promise<FoundBores | null> {
    const { joints } = store.getState().frame.aircraft
    if (!joints.some(({ a, b }) => a.partId === part.id || b.partId === part.id)) return null
    const { handOverJoints: handOver } = await import('../../core/joints/handOverJoints.ts')
    const bores = await Promise.all(
      pieces.map(async ({ source }) => {
        const { unit, pose } = part
        const outcome = await runner.run({ kind: 'shape', source, unit, pose })
        return outcome.ok ? outcome.value.bores : []
      }),
    )
    return { bores, handOverJoints: handOver }
  }

  return {
    async dropSpecks(id) {
      const split = await splitUp(id, 'clean')
      const [piece] = split?.pieces ?? []
      if (split === null || piece === undefined) return
      const { part } = split
      if (piece.source.hash === part.meshHash) return
      const { frame } = store.getState()
      const names = namesBut(frame, part)
      const clean = {
        ...part,
        name: freeName(`${part.name} (cleaned)`, names),
        fileName: piece.source.name,
        meshHash: piece.source.hash,
      }
      const notice = { text: `Dropped the loose scraps of “${part.name}”.`, canUndo: true }
      history.commit(`drop loose scraps of “${part.name}”`, replace(frame, part, [clean]), {
        also: { notice },
      })
    },

    async splitPlate(id) {
      const split = await splitUp(id, 'parts')
      if (split === null) return
      const { part, pieces, nest } = split
      const found = await boresOf(part, pieces)
      if (pieces.length === 1 && pieces[0]?.count === 1) {
        say(
          `“${part.name}” is left as it is: it holds one piece, or more than ${MOST_PIECES}, ` +
            'which are lettering or a grille.',
        )
        return
      }
      const { frame } = store.getState()
      const names = namesBut(frame, part)
      const rows = pieces.map((piece, i): Part => {
        const name = freeName(plainName(piece.name ?? '').trim() || part.name, names)
        names.add(name)
        return {
          ...part,
          ...counts(part, piece),
          ...drawnPlaces(part, piece, nest),
          // The first keeps the row that is open.
          id: i === 0 ? part.id : deps.newId(),
          name,
          fileName: piece.source.name,
          meshHash: piece.source.hash,
        }
      })
      const words = rows.length === 1 ? 'one row' : `${rows.length} rows`
      const placed = rows.some((row) => row.drawnPlaces !== undefined)
        ? ' Where the file puts them can be taken over under Balance.'
        : ''
      const joined = withJoints(replace(frame, part, rows), part, rows, pieces, found)
      const lost =
        joined.lost === ''
          ? ''
          : ` No piece has all holes of its joint with ${joined.lost}: it is lost.`
      const notice = { text: `Made ${words} of “${part.name}”.${placed}${lost}`, canUndo: true }
      history.commit(`take “${part.name}” apart`, joined.next, { also: { notice } })
    },
  }
}

function namesBut(frame: Frame, part: Part): Set<string> {
  return new Set(frame.parts.filter((each) => each !== part).map((each) => each.name))
}

function replace(frame: Frame, part: Part, by: readonly Part[]): Frame {
  return { ...frame, parts: frame.parts.flatMap((each) => (each === part ? by : [each])) }
}

/**
 * Joints of the whole go on with the piece that has their holes; what the others led to comes back
 * by name.
 */
function withJoints(
  next: Frame,
  part: Part,
  rows: readonly Part[],
  pieces: readonly SplitPiece[],
  found: FoundBores | null,
): { readonly next: Frame; readonly lost: string } {
  if (found === null) return { next, lost: '' }
  const { aircraft } = next
  const heirs = rows.map(({ id }, i) => ({
    partId: id,
    bores: found.bores[i] ?? [],
    count: pieces[i]?.count ?? 1,
  }))
  const { kept, lost } = found.handOverJoints(aircraft.joints, part.id, heirs)
  const names = lost.map(({ a, b }) => {
    const other = a.partId === part.id ? b.partId : a.partId
    return `“${next.parts.find(({ id }) => id === other)?.name ?? part.name}”`
  })
  return {
    next: { ...next, aircraft: { ...aircraft, joints: kept } },
    lost: [...new Set(names)].join(', '),
  }
}

/**
 * A piece keeps its place in what it was part of, and that one's in the file. Of equal ones
 * without, the first is known.
 */
function drawnPlaces(
  { drawnPlaces: outer }: Part,
  { places: inner }: SplitPiece,
  nest: typeof nestPlaces,
): { readonly drawnPlaces?: readonly DrawnPlace[] } {
  if (inner === undefined) return {}
  return { drawnPlaces: outer === undefined ? inner : nest(outer, inner) }
}

/**
 * A plate printed several times, some of them mirrored, whose parts are several, some of them
 * mirrored.
 */
function counts(
  { quantity, spares, mirrored }: Part,
  piece: SplitPiece,
): Pick<Part, 'quantity' | 'spares' | 'mirrored'> {
  return {
    quantity: quantity * piece.count,
    spares: spares * piece.count,
    mirrored: (quantity - mirrored) * piece.mirrored + mirrored * (piece.count - piece.mirrored),
  }
}
