import type { Census } from '../../core/model/census.ts'
import type { Frame } from '../../core/model/frame.ts'
import type { PartRead } from '../../jobs/asks/partAsks.ts'
import { latestFirst, summaryOf } from '../store/projectSummary.ts'
import type { Storage } from './storage.ts'
import type { ProjectSummary } from '../store/types.ts'
import type { Workshop } from '../store/workshop.ts'

interface Kept {
  readonly frame: Frame
  readonly summary: ProjectSummary
  readonly revision: number
}

/** A storage that forgets when the page closes: for tests, and for browsers without one. */
export function createMemoryStorage(): Storage {
  const projects = new Map<string, Kept>()
  let current: string | null = null
  let workshop: Workshop | null = null
  const meshes = new Map<string, Blob>()
  const censuses = new Map<string, Census>()
  const reads = new Map<string, PartRead>()
  const answers = new Map<string, unknown>()

  const listed = () => [...projects.values()].map((each) => each.summary).toSorted(latestFirst)

  function patch(id: string, change: Partial<ProjectSummary>): Promise<void> {
    const kept = projects.get(id)
    if (kept !== undefined) projects.set(id, { ...kept, summary: { ...kept.summary, ...change } })
    return Promise.resolve()
  }

  return {
    loadProject(id) {
      const wanted = projects.get(id ?? current ?? '')
      const isThere = id !== null || wanted?.summary.deletedAt === null
      const latest = listed().find((each) => each.deletedAt === null)
      const found = isThere ? wanted : projects.get(latest?.id ?? '')
      return Promise.resolve(
        found === undefined ? null : { frame: found.frame, revision: found.revision },
      )
    },
    saveFrame({ frame, meshes: blobs, massG, basedOn, open }) {
      const stored = projects.get(frame.id)
      if (stored !== undefined && stored.revision !== basedOn) return Promise.resolve(null)
      const revision = (stored?.revision ?? 0) + 1
      projects.set(frame.id, { frame, summary: summaryOf(frame, massG, Date.now()), revision })
      if (open) current = frame.id
      for (const [hash, blob] of blobs) if (!meshes.has(hash)) meshes.set(hash, blob)
      return Promise.resolve(revision)
    },
    openProject(id, basedOn) {
      if (projects.get(id)?.revision !== basedOn) return Promise.resolve(null)
      current = id
      return Promise.resolve(basedOn)
    },
    listProjects: () => Promise.resolve(listed()),
    renameProject(id, name) {
      const kept = projects.get(id)
      if (kept === undefined) return Promise.resolve(null)
      const { frame, summary } = kept
      const revision = kept.revision + 1
      projects.set(id, { frame: { ...frame, name }, summary: { ...summary, name }, revision })
      return Promise.resolve(revision)
    },
    setDeleted: (id, deletedAt) => patch(id, { deletedAt }),
    saveMass: (id, massG) => patch(id, { massG }),
    loadWorkshop: () => Promise.resolve(workshop),
    changeWorkshop(change) {
      workshop = change(workshop)
      return Promise.resolve(workshop)
    },
    loadMesh: (hash) => Promise.resolve(meshes.get(hash) ?? null),
    loadCensus: (key) => Promise.resolve(censuses.get(key) ?? null),
    saveCensus(key, census) {
      censuses.set(key, census)
      return Promise.resolve()
    },
    loadRead: (key) => Promise.resolve(reads.get(key) ?? null),
    saveRead(key, read) {
      reads.set(key, read)
      return Promise.resolve()
    },
    loadAnswer: (key) => Promise.resolve(answers.get(key) ?? null),
    saveAnswer(key, answer) {
      answers.set(key, answer)
      return Promise.resolve()
    },
    tidy: () => Promise.resolve(),
  }
}
