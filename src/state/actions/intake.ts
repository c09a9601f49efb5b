import type { StoreApi } from 'zustand/vanilla'
import { TEXT_LIMITS } from '../../core/data/limits.ts'
import { MATERIALS } from '../../core/data/materials.ts'
import type { Frame, Part } from '../../core/model/frame.ts'
import type { Problem } from '../../core/model/problem.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../core/model/settings.ts'
import type { OpenedFile } from '../../jobs/asks/fileAsks.ts'
import type { Runner } from '../../jobs/runner.ts'
import { freeName } from './edits.ts'
import type { History } from './history.ts'
import { meshHashesOf } from '../storage/meshHashesOf.ts'
import type { Meshes } from '../storage/meshes.ts'
import type { AppState, FileFailure, IncomingFile } from '../store/types.ts'

export type Opened = Extract<OpenedFile, { ok: true }>

export interface Intake {
  /**
   * Opens files and adds a part for every mesh in them, in the order they came, as each is ready.
   * They stand among those being opened from now on; `ready` is when opening may begin.
   */
  addFiles(files: readonly IncomingFile[], ready: Promise<void>): Promise<void>
  /** Opens one file and gives its meshes; what could not be read lands in `failures`. */
  open(file: IncomingFile): Promise<readonly Opened[]>
  fail(failures: readonly Omit<FileFailure, 'id'>[]): void
  /**
   * Runs `read` once it is `ready`, and while the file stands among those being opened; `signal`
   * ends it when the user does.
   */
  opening<T>(
    name: string,
    read: (signal: AbortSignal, tell: (fraction: number) => void) => Promise<T>,
    ready?: Promise<void>,
  ): Promise<T>
  cancel(ids: readonly string[]): void
}

export interface IntakeDeps {
  readonly store: StoreApi<AppState>
  readonly runner: Runner
  readonly history: History
  readonly meshes: Meshes
  readonly newId: () => string
  /** Parts whose lost mesh has come back. */
  readonly onReturned: (ids: readonly string[]) => void
  /** A project file that came alone. */
  readonly onProject: (file: IncomingFile) => Promise<void>
  /** A printer's toolpath, alone or among others. */
  readonly onToolpath: (file: IncomingFile) => Promise<void>
}

export function createIntake(deps: IntakeDeps): Intake {
  const { store, runner, history, meshes, newId } = deps

  function fail(failures: readonly Omit<FileFailure, 'id'>[]): void {
    if (failures.length === 0) return
    store.setState((state) => ({
      failures: [...state.failures, ...failures.map((each) => ({ ...each, id: newId() }))],
    }))
  }

  const aborts = new Map<string, AbortController>()
  let count = 0

  async function opening<T>(
    name: string,
    read: (signal: AbortSignal, tell: (fraction: number) => void) => Promise<T>,
    ready: Promise<void> = Promise.resolve(),
  ): Promise<T> {
    const id = `opening ${(count += 1)}`
    const abort = new AbortController()
    aborts.set(id, abort)
    store.setState((state) => ({ incoming: [...state.incoming, { id, name }] }))
    try {
      await Promise.race([ready, calledOff(abort.signal)])
      return await read(abort.signal, (fraction) => {
        store.setState(({ incoming }) => ({
          incoming: incoming.map((each) => (each.id === id ? { ...each, fraction } : each)),
        }))
      })
    } finally {
      aborts.delete(id)
      store.setState((state) => ({ incoming: state.incoming.filter((each) => each.id !== id) }))
    }
  }

  async function look(
    { name, blob }: IncomingFile,
    ready?: Promise<void>,
  ): Promise<readonly OpenedFile[] | 'project' | 'toolpath'> {
    const outcome = await opening(
      name,
      (signal) => runner.run({ kind: 'open', name, blob }, { signal }),
      ready,
    )
    if (outcome.ok)
      return outcome.value.kind === 'meshes' ? outcome.value.files : outcome.value.kind
    const { problem } = outcome
    return problem.code === 'cancelled' ? [] : [{ ok: false, name, problem }]
  }

  /** Keeps what is sound, reports what is not. */
  function sift(files: readonly OpenedFile[]): readonly Opened[] {
    fail(files.flatMap((each) => (each.ok ? [] : [{ fileName: each.name, problem: each.problem }])))
    const sound = files.filter((each) => each.ok)
    for (const each of sound) meshes.add(each.source, each.raw)
    return sound
  }

  async function open(file: IncomingFile): Promise<readonly Opened[]> {
    const files = await look(file)
    if (typeof files !== 'string') return sift(files)
    const problem = files === 'project' ? projectAmongMeshes(file.name) : noMesh(file.name)
    fail([{ fileName: file.name, problem }])
    return []
  }

  async function addFiles(files: readonly IncomingFile[], ready: Promise<void>): Promise<void> {
    const gesture = `drop ${newId()}`
    /** Place of each part of this drop, so that a late small file does not jump the queue. */
    const places = new Map<string, number>()
    const toolpaths: IncomingFile[] = []
    await Promise.all(
      files.map(async (file, place) => {
        const found = await look(file, ready)
        if (found === 'project' && files.length === 1) await deps.onProject(file)
        else if (found === 'toolpath') toolpaths.push(file)
        else if (found === 'project') {
          fail([{ fileName: file.name, problem: projectAmongMeshes(file.name) }])
        } else addParts(sift(found), place, places, gesture)
      }),
    )
    // Once the meshes that came with them are parts: each is of one of them.
    for (const file of toolpaths) await deps.onToolpath(file)
  }

  function addParts(
    found: readonly Opened[],
    place: number,
    places: Map<string, number>,
    gesture: string,
  ): void {
    const { frame, work } = store.getState()
    const lost = frame.parts.filter((part) => {
      const state = work[part.id]
      return state?.kind === 'failed' && state.problem.code === 'missing-mesh'
    })
    const returned = new Set(found.map((each) => each.source.hash))
    const back = lost.filter((part) =>
      [...meshHashesOf({ parts: [part] })].some((hash) => returned.has(hash)),
    )
    deps.onReturned(back.map((part) => part.id))
    const taken = meshHashesOf({ parts: back })
    const fresh = found.filter((each) => !taken.has(each.source.hash))
    if (fresh.length === 0) return

    const names = new Set(frame.parts.map((part) => part.name))
    const parts = fresh.map((each) => {
      const part = newPart(newId(), each, names)
      names.add(part.name)
      places.set(part.id, place)
      return part
    })
    const at = frame.parts.findIndex((part) => (places.get(part.id) ?? -1) > place)
    const next: Frame = {
      ...frame,
      parts: frame.parts.toSpliced(at === -1 ? frame.parts.length : at, 0, ...parts),
    }
    const unsure = parts.filter((_, i) => fresh[i]?.unit === null)
    const dropOf = {
      ...store.getState().dropOf,
      ...Object.fromEntries(unsure.map((part) => [part.id, gesture])),
    }
    history.commit(`add ${addedWords(next, places)}`, next, { gesture, also: { dropOf } })
  }

  return {
    addFiles,
    open,
    fail,
    opening,
    cancel(ids) {
      for (const id of ids) aborts.get(id)?.abort()
    },
  }
}

function calledOff(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    signal.addEventListener('abort', () => {
      resolve()
    })
  })
}

/** A part as it is when nobody has said anything about it yet. */
export function newPart(id: string, opened: Opened, names: ReadonlySet<string>): Part {
  const { hash } = opened.source
  const name = plainName(opened.source.name)
  return {
    id,
    name: freeName(stem(name), names),
    fileName: name,
    meshHash: hash,
    unit: opened.unit ?? 'millimetre',
    quantity: 1,
    spares: 0,
    mirrored: 0,
    materialId: MATERIALS[0]?.id ?? 'pla',
    recipe: RECIPE_DEFAULTS,
    role: null,
    pose: POSE_AS_DRAWN,
    note: '',
    zones: [],
  }
}

/**
 * Names come from anywhere: no control characters, none that turn the writing round, and no novels.
 */
export function plainName(name: string): string {
  return name
    .replaceAll(/[\p{Cc}\u{200E}\u{200F}\u{202A}-\u{202E}\u{2066}-\u{2069}]/gu, '')
    .slice(-TEXT_LIMITS.name)
}

/** `parts/front_arm-left.stl` becomes `front arm left`. */
function stem(path: string): string {
  const file = path.split(/[\\/]/).at(-1) ?? path
  const bare = file
    .replace(/\.[^.]+$/, '')
    .replace(/[_-]+/g, ' ')
    .trim()
  return bare || file.trim() || 'part'
}

function addedWords(frame: Frame, places: ReadonlyMap<string, number>): string {
  const added = frame.parts.filter((part) => places.has(part.id))
  const [first] = added
  return added.length === 1 && first !== undefined ? `“${first.name}”` : `${added.length} parts`
}

function noMesh(name: string): Problem {
  return {
    code: 'unknown-format',
    message: `“${name}” holds the moves of a printer, not a mesh.`,
    advice: 'Drop it anywhere else on the page to see what it comes to.',
  }
}

function projectAmongMeshes(name: string): Problem {
  return {
    code: 'bad-project',
    message: `“${name}” is a saved frame, not a mesh, and came together with other files.`,
    advice: 'Drop it by itself to open it in place of the present frame.',
  }
}
