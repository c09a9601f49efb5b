import type { StoreApi } from 'zustand/vanilla'
import type { Lesson } from '../../core/doubt/lessons.ts'
import { lessonsOf } from '../../core/frame/lessonsOf.ts'
import type { Frame } from '../../core/model/frame.ts'
import { frameSummary } from '../store/derived.ts'
import { sameValue } from '../store/sameValue.ts'
import type { Actions, AppState } from '../store/types.ts'
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
  const takeDown = (state: AppState, before: AppState): void => {
    if (state.frame === before.frame && state.work === before.work) return
    const { frame } = state
    const { lessons } = state.workshop
    const own = lessons.filter((one) => isOf(one, frame.id))
    if (own.length === 0 && !hasReadings(frame)) return
    const { sum, runningCount } = frameSummary(state)
    if (runningCount > 0) return
    const now = lessonsOf(sum.doubt, frame.id, frame.printer.id)
    if (sameValue(now, own)) return
    put((old) => [...old.filter((one) => !isOf(one, frame.id)), ...now].slice(-MOST))
  }
  const close = store.subscribe(takeDown)
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
    },
  }
}

function hasReadings({ parts, wholes = [], clocks = [] }: Frame): boolean {
  return wholes.length + clocks.length > 0 || parts.some(({ weighIn }) => weighIn !== undefined)
}

/** Whether a lesson tells of a spool, or with null of hours. */
function isAbout({ of, materialIds }: Lesson, materialId: string | null): boolean {
  return materialId === null ? of === 'time' : materialIds.includes(materialId)
}

function isOf({ id }: Lesson, frameId: string): boolean {
  return id.startsWith(`${frameId}/`)
}
