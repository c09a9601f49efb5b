import type { StoreApi } from 'zustand/vanilla'
import type { Lesson } from '../../core/doubt/lessons.ts'
import { lessonsOf } from '../../core/frame/lessonsOf.ts'
import type { Frame } from '../../core/model/frame.ts'
import { frameSummary } from '../store/derived.ts'
import { sameValue } from '../store/sameValue.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'
import type { WorkshopKeeper } from './workshop.ts'

/** The latest are kept. */
const MOST = 500

/**
 * Keeps what the readings of the present frame teach, for the frames after it. They are taken down
 * once its layers are counted and again whenever a reading or what was read changes.
 */
export function createLearning(
  store: StoreApi<AppState>,
  workshop: Pick<WorkshopKeeper, 'change'>,
): Pick<Actions, 'forgetLessons' | 'dropLessons'> & { readonly close: () => void } {
  const put = (edit: (lessons: readonly Lesson[]) => readonly Lesson[]): void => {
    workshop.change((old) => ({ ...old, lessons: edit(old.lessons) }))
  }
  const noteDown = (state: AppState, before: AppState): void => {
    if (state.frame === before.frame && state.work === before.work) return
    const { frame } = state
    if (frame !== before.frame) noteDownHoles(state)
    const { lessons } = state.workshop
    const own = lessons.filter((one) => isOf(one, frame.id))
    if (own.length === 0 && !hasReadings(frame)) return
    const { sum, runningCount } = frameSummary(state)
    if (runningCount > 0) return
    const now = lessonsOf(sum.doubt, frame.id, frame.printer.id)
    if (sameValue(now, own)) return
    put((old) => [...old.filter((one) => !isOf(one, frame.id)), ...now].slice(-MOST))
  }
  const noteDownHoles = ({ frame, workshop: kept }: AppState): void => {
    const all = kept.holeReadings ?? []
    const own = all.filter((one) => isOf(one, frame.id))
    const now = (frame.holeReadings ?? []).map((one) => ({ ...one, id: `${frame.id}/${one.id}` }))
    if (sameValue(now, own)) return
    workshop.change((old) => {
      const others = (old.holeReadings ?? []).filter((one) => !isOf(one, frame.id))
      return { ...old, holeReadings: [...others, ...now].slice(-MOST) }
    })
  }
  const close = store.subscribe(noteDown)
  return {
    close,
    forgetLessons(materialId, printerId) {
      const { id } = store.getState().frame
      put((old) =>
        old.filter(
          (one) => isOf(one, id) || one.printerId !== printerId || !isAbout(one, materialId),
        ),
      )
    },
    dropLessons(ids) {
      const dropped = new Set(ids)
      put((old) => old.filter(({ id }) => !dropped.has(id)))
      workshop.change((old) => {
        if (old.holeReadings?.some(({ id }) => dropped.has(id)) !== true) return old
        return { ...old, holeReadings: old.holeReadings.filter(({ id }) => !dropped.has(id)) }
      })
    },
  }
}

function hasReadings({ parts, wholes = [], clocks = [], laid = [] }: Frame): boolean {
  return (
    wholes.length + clocks.length + laid.length > 0 ||
    parts.some(({ weighIn }) => weighIn !== undefined)
  )
}

/** Whether a lesson tells of a spool, or with null of hours. */
function isAbout({ of, materialIds }: Lesson, materialId: string | null): boolean {
  return materialId === null ? of === 'time' : materialIds.includes(materialId)
}

function isOf({ id }: Pick<Lesson, 'id'>, frameId: string): boolean {
  return id.startsWith(`${frameId}/`)
}
