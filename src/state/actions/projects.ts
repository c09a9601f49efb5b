import type { StoreApi } from 'zustand/vanilla'
import { TEXT_LIMITS } from '../../core/data/limits.ts'
import type { Frame } from '../../core/model/frame.ts'
import type { ActionDeps } from './actions.ts'
import { freeName } from './edits.ts'
import type { FrameFiles } from './frameFiles.ts'
import type { History } from './history.ts'
import { meshHashesOf } from '../storage/meshHashesOf.ts'
import type { Meshes } from '../storage/meshes.ts'
import { parseFrame } from '../storage/parseFrame.ts'
import { isBlank } from '../store/projectSummary.ts'
import type { Saver } from '../storage/saver.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'

type ProjectActions = Pick<
  Actions,
  | 'listProjects'
  | 'openStored'
  | 'renameProject'
  | 'duplicateProject'
  | 'deleteProject'
  | 'bringBackProject'
  | 'takeOver'
  | 'openCopy'
>

interface ProjectsDeps extends ActionDeps {
  readonly store: StoreApi<AppState>
  readonly history: History
  readonly meshes: Meshes
  readonly saver: Saver
  readonly files: FrameFiles
}

/** Actions on the projects kept on this device. Each ends with the list as it then is. */
export function createProjects(deps: ProjectsDeps): ProjectActions {
  const { store, history, meshes, saver, files, storage, claims, now, newId } = deps
  const present = () => store.getState().frame

  function say(text: string): void {
    store.setState({ notice: { text, canUndo: false } })
  }

  async function list(): Promise<void> {
    const all = await storage.listProjects()
    const { id } = present()
    store.setState({ projects: all.filter((each) => each.id === id || !isBlank(each)) })
  }

  /** Does what was asked and lists anew; storage that fails is said, not thrown. */
  async function attempt(work: () => Promise<void>): Promise<void> {
    try {
      await saver.flush()
      await work()
      await list()
    } catch (error) {
      const words = error instanceof Error && error.message !== '' ? ` (${error.message})` : ''
      say(`The browser’s storage did not answer${words}. What is on the page goes on.`)
    }
  }

  const nameOf = (id: string) =>
    store.getState().projects.find((each) => each.id === id)?.name ?? 'This frame'

  /** Another tab may be in the middle of changing it. */
  async function isBusy(id: string): Promise<boolean> {
    if (id === present().id || !(await claims.isElsewhere(id))) return false
    say(`“${nameOf(id)}” is open in another tab. Close it there first.`)
    return true
  }

  async function show(id: string): Promise<void> {
    if (id === present().id) return
    const name = nameOf(id)
    const stored = await storage.loadProject(id)
    if (stored === null) {
      say(`“${name}” is not kept here any more.`)
      return
    }
    const frame = files.accept(stored, name)
    if (frame === null) return
    const isOurs = await claims.hold(id)
    history.commit(`open “${frame.name}”`, frame, {
      also: {
        selection: [],
        openPartId: null,
        elsewhere: isOurs ? null : { projectId: id, why: 'open' },
      },
    })
  }

  function copyOf(frame: Frame): Frame {
    const names = new Set([frame.name, ...store.getState().projects.map((each) => each.name)])
    return { ...frame, id: newId(), name: freeName(frame.name, names) }
  }

  return {
    listProjects: () => attempt(() => Promise.resolve()),
    openStored: (id) => attempt(() => show(id)),

    renameProject: (id, name) =>
      attempt(async () => {
        const trimmed = name.trim()
        if (trimmed === '' || trimmed === nameOf(id) || (await isBusy(id))) return
        if (trimmed.length > TEXT_LIMITS.name) {
          say(`Nothing was changed: a name has ${TEXT_LIMITS.name} letters at most.`)
          return
        }
        if (id === present().id) {
          history.commit('rename the frame', { ...present(), name: trimmed })
          await saver.flush()
          return
        }
        const revision = await storage.renameProject(id, trimmed)
        history.rename(id, trimmed)
        saver.forget(id, revision)
      }),

    duplicateProject: (id) =>
      attempt(async () => {
        const stored = id === present().id ? null : await storage.loadProject(id)
        const parsed = stored === null ? null : parseFrame(stored.frame)
        if (parsed?.ok === false) {
          say(`“${nameOf(id)}” cannot be read. ${parsed.problem.message}`)
          return
        }
        const frame = copyOf(parsed?.value.frame ?? present())
        const massG = store.getState().projects.find((each) => each.id === id)?.massG ?? null
        const held = meshes.held(meshHashesOf(frame))
        await storage.saveFrame({ frame, meshes: held, massG, basedOn: null, open: false })
      }),

    deleteProject: (id) =>
      attempt(async () => {
        if (await isBusy(id)) return
        if (id === present().id) await showAnother()
        await saver.flush()
        await storage.setDeleted(id, now())
        // Undo may lead back to it; it is then written anew.
        saver.forget(id, null)
      }),

    bringBackProject: (id) => attempt(() => storage.setDeleted(id, null)),

    takeOver: () =>
      attempt(async () => {
        const { id } = present()
        await claims.takeOver(id)
        const stored = await storage.loadProject(id)
        const frame = stored === null ? present() : files.accept(stored, present().name)
        if (frame !== null) history.reset(frame, { elsewhere: null })
      }),

    openCopy() {
      const frame = copyOf(present())
      history.commit(`copy “${present().name}”`, frame, { also: { elsewhere: null } })
    },
  }

  /**
   * Puts the project changed last in the place of the present one; an empty frame when there is
   * none.
   */
  async function showAnother(): Promise<void> {
    const { id } = present()
    for (const next of await storage.listProjects()) {
      if (next.id === id || next.deletedAt !== null || isBlank(next)) continue
      if (await claims.isElsewhere(next.id)) continue
      await show(next.id)
      break
    }
    if (present().id === id) files.newFrame()
  }
}
