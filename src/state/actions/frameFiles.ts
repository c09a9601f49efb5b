import type { StoreApi } from 'zustand/vanilla'
import type { Frame } from '../../core/model/frame.ts'
import { PreweighError } from '../../core/model/problem.ts'
import type { ActionDeps } from './actions.ts'
import { demoFrame, demoPart } from './demoFrame.ts'
import { emptyFrame } from '../store/emptyFrame.ts'
import type { History } from './history.ts'
import { newPart, type Intake } from './intake.ts'
import { meshesNeededBy } from '../storage/meshHashesOf.ts'
import type { Meshes } from '../storage/meshes.ts'
import { parseFrame } from '../storage/parseFrame.ts'
import { projectEntries, readProject } from '../storage/projectFile.ts'
import type { Saver } from '../storage/saver.ts'
import type { StoredProject } from '../storage/storage.ts'
import type { Actions } from './types.ts'
import type { AppState, IncomingFile } from '../store/types.ts'
import { whyNot } from './whyNot.ts'
import type { WorkshopKeeper } from './workshop.ts'

export interface FrameFiles extends Pick<
  Actions,
  'loadDemo' | 'loadPieces' | 'saveProject' | 'newFrame'
> {
  /** The file is seen to be opened at once; `ready` is when opening may begin. */
  openProject(file: IncomingFile, ready: Promise<void>): Promise<void>
  restore(): Promise<void>
  /** Resolves once storage is tidied after the start. */
  tidied(): Promise<void>
  /**
   * Reads a frame out of storage; what is damaged in it lands in `failures`. Null when it cannot be
   * read at all.
   */
  accept(stored: StoredProject, name: string): Frame | null
}

export interface FrameFilesDeps extends ActionDeps {
  readonly store: StoreApi<AppState>
  readonly history: History
  readonly meshes: Meshes
  readonly saver: Saver
  readonly intake: Intake
  readonly workshop: Pick<WorkshopKeeper, 'load' | 'mine'>
}

/**
 * Actions that put another frame in the place of the present one, and the one that writes it out.
 */
export function createFrameFiles(deps: FrameFilesDeps): FrameFiles {
  const { store, history, meshes, saver, intake, runner, storage, claims, newId } = deps

  const blankFrame = (): Frame => emptyFrame(newId(), deps.workshop.mine())

  /** Each complaint becomes a line the user can read and dismiss. */
  function complain(fileName: string, complaints: readonly string[]): void {
    const advice = 'The rest was opened. Check the part, or take another copy of the file.'
    intake.fail(
      complaints.map((message) => ({
        fileName,
        problem: { code: 'bad-project', message, advice },
        partial: true,
      })),
    )
  }

  function accept(stored: StoredProject, name: string): Frame | null {
    const parsed = parseFrame(stored.frame)
    if (!parsed.ok) {
      intake.fail([{ fileName: name, problem: parsed.problem }])
      return null
    }
    complain(name, parsed.value.complaints)
    const { frame } = parsed.value
    saver.know(frame, stored.revision)
    return frame
  }

  /**
   * A file of a project that is here already, perhaps a later state of it, becomes a project of its
   * own.
   */
  async function withOwnId(frame: Frame): Promise<Frame> {
    if (frame.id !== store.getState().frame.id) {
      const stored = await storage.loadProject(frame.id).catch(() => null)
      if (stored === null) return frame
    }
    return { ...frame, id: newId() }
  }

  let tidying: Promise<void> = Promise.resolve()
  async function tidyIfAlone(): Promise<void> {
    if (!(await claims.isAlone())) return
    await storage.tidy(store.getState().frame).catch(() => undefined)
  }

  return {
    accept,
    tidied: () => tidying,

    async loadDemo(id) {
      const outcome = await deps.demos.load(id)
      if (!outcome.ok) {
        intake.fail([{ fileName: id, problem: outcome.problem }])
        return
      }
      const parts = await Promise.all(
        outcome.value.parts.map(async (each) => {
          const [opened] = await intake.open(each.file)
          return opened === undefined ? [] : [demoPart(newPart(newId(), opened, new Set()), each)]
        }),
      )
      const frame = demoFrame(blankFrame(), outcome.value, parts.flat())
      const story = { frameId: frame.id, text: outcome.value.story }
      history.commit(`load “${frame.name}”`, frame, {
        also: { selection: [], openPartId: null, story },
      })
    },

    async loadPieces(name, pieces) {
      const { materials, printer, prices, parts: present } = store.getState().frame
      const materialId = present[0]?.materialId
      const parts = await Promise.all(
        pieces.map(async ({ file, recipe, name: pieceName, note }) => {
          const [opened] = await intake.open(file)
          if (opened === undefined) return []
          const part = newPart(newId(), opened, new Set())
          return [
            { ...part, name: pieceName, note, recipe, materialId: materialId ?? part.materialId },
          ]
        }),
      )
      const frame = { ...blankFrame(), name, materials, printer, prices, parts: parts.flat() }
      history.commit(`load “${name}”`, frame, {
        also: { selection: [], openPartId: null, story: null },
      })
    },

    async openProject(file, ready) {
      const unpacked = await intake.opening(
        file.name,
        (signal) => runner.run({ kind: 'unpack', blob: file.blob }, { signal }),
        ready,
      )
      if (!unpacked.ok && unpacked.problem.code === 'cancelled') return
      const outcome = unpacked.ok ? await readProject(unpacked.value) : unpacked
      if (!outcome.ok) {
        intake.fail([{ fileName: file.name, problem: outcome.problem }])
        return
      }
      const { complaints } = outcome.value
      const frame = await withOwnId(outcome.value.frame)
      for (const source of outcome.value.meshes) meshes.add(source, null)
      complain(file.name, complaints)
      const text =
        complaints.length === 0
          ? `Opened “${frame.name}”.`
          : `Opened “${frame.name}”; ` +
            `${complaints.length === 1 ? 'one thing' : `${complaints.length} things`} ` +
            'in it could not be read.'
      history.commit(`open “${frame.name}”`, frame, {
        also: { selection: [], openPartId: null, notice: { text, canUndo: true } },
      })
    },

    async saveProject() {
      const { frame } = store.getState()
      const found = new Map<string, Blob>()
      const lost: string[] = []
      for (const { hash, fileName, words } of meshesNeededBy(frame)) {
        const source = await meshes.find(hash, fileName)
        if (source === null) lost.push(words)
        else found.set(hash, source.blob)
      }
      const entries = projectEntries(frame, found, deps.now())
      const outcome = await runner.run({ kind: 'pack', entries })
      if (!outcome.ok) {
        const { code, message, advice } = outcome.problem
        throw new PreweighError(code, message, advice)
      }
      if (lost.length > 0) {
        const text = `Saved without the mesh of ${lost.join(', ')}, which is not kept here any more.`
        store.setState({ notice: { text, canUndo: false } })
      }
      return outcome.value
    },

    newFrame() {
      const { name, parts } = store.getState().frame
      const rest = parts.length === 0 ? '' : ` “${name}” stays among the frames on this device.`
      history.commit('start a new frame', blankFrame(), {
        also: {
          selection: [],
          openPartId: null,
          notice: { text: `Started a new frame.${rest}`, canUndo: true },
        },
      })
    },

    async restore() {
      complain('What is kept as yours', await deps.workshop.load())
      let stored: StoredProject | null
      try {
        stored = await storage.loadProject(deps.preferredProject ?? null)
        if (stored === null && deps.preferredProject !== undefined) {
          stored = await storage.loadProject(null)
        }
      } catch (error) {
        store.setState({ frame: blankFrame() })
        saver.start(whyNot(error))
        return
      }
      // One that cannot be read stays as it is in storage, for a newer page or another try.
      const frame = stored === null ? null : accept(stored, 'Frame of the last visit')
      if (frame === null) {
        store.setState({ frame: blankFrame() })
      } else {
        const isOurs = await claims.hold(frame.id)
        store.setState({
          frame,
          elsewhere: isOurs ? null : { projectId: frame.id, why: 'open' },
        })
      }
      saver.start(null)
      const { broughtBack = 0 } = stored ?? {}
      if (broughtBack > 0) {
        const what = broughtBack === 1 ? 'The frame' : `All ${broughtBack} frames`
        const text = `The browser had lost what it kept. ${what} came back from the second copy; check the last change.`
        store.setState({ notice: { text, canUndo: false } })
      }
      // Not waited for: what is dropped meanwhile must show at once.
      tidying = tidyIfAlone()
    },
  }
}
