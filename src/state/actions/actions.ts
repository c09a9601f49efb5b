import type { StoreApi } from 'zustand/vanilla'
import type { Part } from '../../core/model/frame.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import { PreweighError } from '../../core/model/problem.ts'
import type { Pose } from '../../core/model/settings.ts'
import type { MeshSource } from '../../jobs/asks/fileAsks.ts'
import type { Runner } from '../../jobs/runner.ts'
import { createAnalysis, missingMesh, missingZone, takenAs } from './analysis.ts'
import type { Claims } from '../storage/claims.ts'
import type { DemoSource } from './demos.ts'
import { createDrawFrame } from './drawings.ts'
import { keepAnswers } from './keptAnswers.ts'
import { createCounted } from '../store/counted.ts'
import { createFrameActions } from './frameActions.ts'
import { createFrameFiles } from './frameFiles.ts'
import { createHistory } from './history.ts'
import { createIntake } from './intake.ts'
import { createLearning } from './learning.ts'
import { createMeshes } from '../storage/meshes.ts'
import { createJointOffers } from './jointOffers.ts'
import { createPartLooks } from './partLooks.ts'
import { createRunActions, startLaying } from './runActions.ts'
import { createPoses } from './poses.ts'
import { createProjects } from './projects.ts'
import { createRoleActions } from './roleActions.ts'
import { createReshape } from './reshape.ts'
import { createSaver } from '../storage/saver.ts'
import type { Storage } from '../storage/storage.ts'
import type { AppState } from '../store/types.ts'
import type { Session } from './types.ts'
import { createToolpaths } from './toolpaths.ts'
import { createWorkshop, type WorkshopNews } from './workshop.ts'
import { createZones } from './zones.ts'

export interface ActionDeps {
  readonly runner: Runner
  readonly storage: Storage
  readonly claims: Claims
  readonly demos: DemoSource
  /** Milliseconds since 1970. */
  readonly now: () => number
  readonly newId: () => string
  /** BCP 47, for the currency a new frame starts in. */
  readonly locale: string
  /**
   * The project this tab showed before it was reloaded; without it the one opened last in any tab
   * is shown.
   */
  readonly preferredProject?: string
  /** Without it the workshop of another tab is seen at the next start or change. */
  readonly workshopNews?: WorkshopNews
  /** After how long without a change, ms, pieces are laid into print runs; without it never. */
  readonly laysRunsAfterMs?: number
}

/**
 * Wires the store to everything that changes it. Nothing happens before `restore` or another action
 * is called.
 */
export function createActions(store: StoreApi<AppState>, deps: ActionDeps): Session {
  const { runner, storage, claims, newId } = deps
  const history = createHistory(store)
  const meshes = createMeshes(storage)
  const counted = createCounted(storage)
  const saver = createSaver(store, storage, meshes, claims)
  const analysis = createAnalysis(store, runner, meshes, counted)
  const intake = createIntake({
    store,
    runner,
    history,
    meshes,
    newId,
    onReturned: (ids) => analysis.retry(ids),
    onProject: (file) => files.openProject(file, restored),
    onToolpath: (file) => readToolpath(file),
  })
  const workshop = createWorkshop({
    store,
    storage,
    history,
    locale: deps.locale,
    ...(deps.workshopNews === undefined ? {} : { news: deps.workshopNews }),
  })
  const { close: stopLearning, ...learning } = createLearning(store, workshop)
  const files = createFrameFiles({ ...deps, store, history, meshes, saver, intake, workshop })
  const { readToolpath, ...toolpathActions } = createToolpaths({
    ...deps,
    store,
    history,
    meshes,
    intake,
  })
  const zones = createZones({ store, history, intake })
  const projects = createProjects({ ...deps, store, history, meshes, saver, files })

  /**
   * Files on their way, so that `settled` can wait for them and none overtakes the last visit's
   * frame.
   */
  const busy = new Set<Promise<unknown>>()
  let restored: Promise<void> = Promise.resolve()
  async function keepTrack(running: Promise<void>): Promise<void> {
    busy.add(running)
    await running.finally(() => busy.delete(running))
  }
  const afterRestore = (work: () => Promise<void>): Promise<void> => keepTrack(restored.then(work))

  async function meshOf(
    id: string,
  ): Promise<{ readonly source: MeshSource; readonly unit: LengthUnit; readonly pose: Pose }> {
    const part = store.getState().frame.parts.find((each) => each.id === id)
    if (part === undefined) {
      throw new PreweighError('cancelled', 'This part was removed.', 'Undo to bring it back.')
    }
    const source = await meshes.find(part.meshHash, part.fileName)
    if (source === null) {
      const { code, message, advice } = missingMesh(part)
      throw new PreweighError(code, message, advice)
    }
    return { source: takenAs(source, part), unit: part.unit, pose: part.pose }
  }

  const findZones = ({ name, zones: own }: Part): Promise<readonly MeshSource[]> =>
    Promise.all(
      own.map(async (zone) => {
        const source = await meshes.find(zone.meshHash, zone.fileName)
        if (source !== null) return source
        const { code, message, advice } = missingZone(name, zone)
        throw new PreweighError(code, message, advice)
      }),
    )

  if (deps.laysRunsAfterMs !== undefined) {
    startLaying(store, runner, meshes, deps.laysRunsAfterMs)
  }
  const keeper = keepAnswers(runner, storage)
  const reshape = createReshape({ store, runner, history, meshes, newId, meshOf })
  return {
    ...createFrameActions(store, history, newId),
    ...createPoses({ store, runner, counted, meshOf, findZones }),
    ...projects,
    drawFrame: createDrawFrame(store, keeper, meshes),
    ...createPartLooks(store, keeper, meshes),
    ...createJointOffers(store, keeper, meshes),
    ...createRunActions(store, history),
    ...learning,
    ...toolpathActions,
    ...createRoleActions(store, history, newId, workshop),
    keepAsMine: workshop.keepAsMine,
    takeMine: workshop.takeMine,
    putUnits: workshop.putUnits,
    putSpools: workshop.putSpools,
    addZones: (id, picked) => afterRestore(() => zones.addZones(id, picked)),
    dropZone: zones.dropZone,
    lowerZone: zones.lowerZone,
    setZonePct: zones.setZonePct,
    splitPlate: (id) => afterRestore(() => reshape.splitPlate(id)),
    dropSpecks: (id) => afterRestore(() => reshape.dropSpecks(id)),
    // Seen at once, whatever storage is busy with.
    addFiles: (incoming) => keepTrack(intake.addFiles(incoming, restored)),
    loadPieces: (name, pieces) => afterRestore(() => files.loadPieces(name, pieces)),
    loadDemo: (id) => afterRestore(() => files.loadDemo(id)),
    openProject: (file) => keepTrack(files.openProject(file, restored)),
    cancelOpening: intake.cancel,
    saveProject: files.saveProject,
    newFrame: files.newFrame,
    retryPart: (id) => analysis.retry([id]),
    countFully: (id) => history.amendPart(id, { countsFully: true }),
    undo: history.undo,
    redo: history.redo,

    async loadMesh(id) {
      const outcome = await runner.run({ kind: 'mesh', ...(await meshOf(id)) })
      if (outcome.ok) return outcome.value
      const { code, message, advice } = outcome.problem
      throw new PreweighError(code, message, advice)
    },
    async loadShape(id) {
      const outcome = await keeper.run({ kind: 'shape', ...(await meshOf(id)) })
      if (outcome.ok) return outcome.value
      const { code, message, advice } = outcome.problem
      throw new PreweighError(code, message, advice)
    },

    restore() {
      restored = files.restore()
      return restored
    },
    async flush() {
      await Promise.all([saver.flush(), workshop.settled()])
    },
    async settled() {
      await restored
      while (busy.size > 0) await Promise.allSettled(busy)
      await analysis.settled()
      await saver.flush()
      await workshop.settled()
      await files.tidied()
    },
    close() {
      stopLearning()
      workshop.close()
      analysis.close()
      saver.close()
      claims.close()
      runner.close()
    },
  }
}
