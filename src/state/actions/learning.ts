import type { StoreApi } from 'zustand/vanilla'
import type { Lesson } from '../../core/doubt/lessons.ts'
import { lessonsOf } from '../../core/frame/lessonsOf.ts'
import type { Frame } from '../../core/model/frame.ts'
import { keepLessons, keptLessons } from '../storage/lessonShelf.ts'
import { frameSummary } from '../store/derived.ts'
import type { Actions, AppState } from '../store/types.ts'

/**
 * Keeps what the readings of the present frame teach, for the frames after it. They are taken down
 * once its layers are counted and again whenever a reading or what was read changes.
 */
export function createLearning(
  store: StoreApi<AppState>,
): Pick<Actions, 'forgetLessons'> & { readonly close: () => void } {
  const put = (lessons: readonly Lesson[]): void => {
    keepLessons(lessons)
    store.setState({ lessons })
  }
  const takeDown = (state: AppState, before: AppState): void => {
    if (state.frame === before.frame && state.work === before.work) return
    const { frame, lessons } = state
    const own = lessons.filter((one) => isOf(one, frame.id))
    if (own.length === 0 && !hasReadings(frame)) return
    const { sum, runningCount } = frameSummary(state)
    if (runningCount > 0) return
    const now = lessonsOf(sum.doubt, frame.id, frame.printer.id)
    if (JSON.stringify(now) === JSON.stringify(own)) return
    put([...lessons.filter((one) => !isOf(one, frame.id)), ...now])
  }
  store.setState({ lessons: keptLessons() })
  const close = store.subscribe(takeDown)
  return {
    close,
    forgetLessons(materialId, printerId) {
      const { frame, lessons } = store.getState()
      put(
        lessons.filter(
          (one) => isOf(one, frame.id) || one.printerId !== printerId || !isAbout(one, materialId),
        ),
      )
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
