import type { Census } from '../../core/model/census.ts'
import type { Frame } from '../../core/model/frame.ts'
import type { PartRead } from '../../jobs/asks/partAsks.ts'
import type { ProjectSummary } from '../store/types.ts'
import type { Workshop } from '../store/workshop.ts'

/**
 * A frame as it was written, unchecked, and how often it was written before: no one may write over
 * another's change.
 */
export interface StoredProject {
  readonly frame: unknown
  readonly revision: number
  /** How many projects had to be fetched from a second copy, because the browser had lost them. */
  readonly broughtBack?: number
}

export interface SaveFrame {
  readonly frame: Frame
  /**
   * The mesh files it needs, as far as this visit has them; those already stored are left alone.
   */
  readonly meshes: ReadonlyMap<string, Blob>
  /** For the list of projects; null while layers are still being counted. */
  readonly massG: number | null
  /** The revision this change was made on; null for a project that was never stored. */
  readonly basedOn: number | null
  /** Whether the next visit opens with it. */
  readonly open: boolean
}

/**
 * Where projects live between visits; each is a frame under its id. Every method may reject: the
 * browser can deny storage, run out of room or lose it at any time. The caller then goes on in
 * memory and says so.
 */
export interface Storage {
  /**
   * A project by id; for null the one opened last, else the one changed last. Null when there is
   * none.
   */
  loadProject(id: string | null): Promise<StoredProject | null>
  /**
   * Writes the frame and those of its meshes that are not stored yet, all or nothing, and brings
   * the project back if it was deleted. Gives the new revision; null, and nothing written, when the
   * stored one is not `basedOn`.
   */
  saveFrame(save: SaveFrame): Promise<number | null>
  /** Makes a stored project the one the next visit opens with. Null like `saveFrame`. */
  openProject(id: string, basedOn: number | null): Promise<number | null>
  /**
   * All projects, the deleted ones among them as long as they can be brought back; the latest
   * change first.
   */
  listProjects(): Promise<readonly ProjectSummary[]>
  /** Gives the new revision; null when there is no such project. */
  renameProject(id: string, name: string): Promise<number | null>
  /** Marks a project as deleted, or no longer. */
  setDeleted(id: string, deletedAt: number | null): Promise<void>
  /**
   * Told apart from the frame, since it is known only once the layers are counted; no change of the
   * project.
   */
  saveMass(id: string, massG: number | null): Promise<void>
  /** The workshop as it was written, unchecked; null when none was. */
  loadWorkshop(): Promise<unknown>
  /**
   * Changes what is written now, another tab's changes included, and gives what then is; `change`
   * gets null for none.
   */
  changeWorkshop(change: (kept: unknown) => Workshop): Promise<Workshop>
  loadMesh(hash: string): Promise<Blob | null>
  loadCensus(key: string): Promise<Census | null>
  saveCensus(key: string, census: Census): Promise<void>
  loadRead(key: string): Promise<PartRead | null>
  saveRead(key: string, read: PartRead): Promise<void>
  /** What a worker drew, cut or reckoned before; null for what it did not. */
  loadAnswer(key: string): Promise<unknown>
  saveAnswer(key: string, answer: unknown): Promise<void>
  /**
   * Throws out projects deleted more than a day ago, empty ones nobody named, meshes that neither a
   * project nor `needed` has needed for a day, and all but the latest of what was computed. Only while no other
   * page is open: its undo may still need what no project does.
   */
  tidy(needed: Frame): Promise<void>
}
