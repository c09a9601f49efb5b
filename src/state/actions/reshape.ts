import type { StoreApi } from 'zustand/vanilla'
import type { DrawnPlace } from '../../core/model/aircraft.ts'
import type { nestPlaces } from '../../core/mesh/split/drawnPlace.ts'
import { MOST_PIECES } from '../../core/mesh/split/findPieces.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import type { Frame, Part } from '../../core/model/frame.ts'
import type { MeshSource, SplitAsk, SplitPiece } from '../../jobs/protocol.ts'
import type { Runner } from '../../jobs/runner.ts'
import { freeName } from './edits.ts'
import type { History } from './history.ts'
import { plainName } from './intake.ts'
import type { Meshes } from '../storage/meshes.ts'
import type { Actions, AppState } from '../store/types.ts'

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

  /** The new pieces and the part as it is once they are there; null where something went wrong, which was then said. */
  async function take(
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

  return {
    async dropSpecks(id) {
      const taken = await take(id, 'clean')
      const [piece] = taken?.pieces ?? []
      if (taken === null || piece === undefined) return
      const { part } = taken
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
      const taken = await take(id, 'parts')
      if (taken === null) return
      const { part, pieces, nest } = taken
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
      const { next, lost } = withoutJointsOf(replace(frame, part, rows), part.id)
      const unjoined = lost === 0 ? '' : ` Joints of the whole are gone: ${lost}.`
      const notice = { text: `Made ${words} of “${part.name}”.${placed}${unjoined}`, canUndo: true }
      history.commit(`take “${part.name}” apart`, next, { also: { notice } })
    },
  }
}

function namesBut(frame: Frame, part: Part): Set<string> {
  return new Set(frame.parts.filter((each) => each !== part).map((each) => each.name))
}

function replace(frame: Frame, part: Part, by: readonly Part[]): Frame {
  return { ...frame, parts: frame.parts.flatMap((each) => (each === part ? by : [each])) }
}

/** Where pieces met the whole tells nothing of what it came apart into. */
function withoutJointsOf(
  frame: Frame,
  id: string,
): { readonly next: Frame; readonly lost: number } {
  const { aircraft } = frame
  const joints = aircraft.joints.filter(({ a, b }) => a.partId !== id && b.partId !== id)
  const lost = aircraft.joints.length - joints.length
  return { next: lost === 0 ? frame : { ...frame, aircraft: { ...aircraft, joints } }, lost }
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

/** A plate printed several times, some of them mirrored, whose parts are several, some of them mirrored. */
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
