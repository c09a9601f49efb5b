import { Button } from 'react-aria-components'
import { useShallow } from 'zustand/react/shallow'
import { PRINTERS } from '../../core/data/printers.ts'
import type { Lesson } from '../../core/doubt/lessons.ts'
import { formatNumber } from '../../core/words/format.ts'
import { materialsOf } from '../../state/store/materialOf.ts'
import { useActions, useAppState } from '../appContext.ts'

/**
 * What readings of earlier frames taught, each by itself; the present frame's own stand with its
 * readings.
 */
export function LessonList() {
  const frameId = useAppState((state) => state.frame.id)
  const all = useAppState((state) => state.workshop.lessons)
  const materials = useAppState(
    useShallow(({ frame, workshop }) => [...workshop.materials, ...materialsOf(frame)]),
  )
  const printers = useAppState(
    useShallow(({ frame, workshop }) => [frame.printer, workshop.printer, ...PRINTERS]),
  )
  const { dropLessons } = useActions()
  const lessons = all.filter(({ id }) => !id.startsWith(`${frameId}/`))
  if (lessons.length === 0) return null
  const nameOf = (id: string) => materials.find((each) => each.id === id)?.name ?? id
  const printerOf = (id: string) =>
    printers.find((each) => each?.id === id)?.name ?? 'a printer that is not here'
  return (
    <details className="lesson-list">
      <summary>Learned from earlier frames ({formatNumber(lessons.length)})</summary>
      <ul className="learned-list" aria-label="Learned from earlier frames">
        {lessons.map((lesson) => (
          <li key={lesson.id}>
            {lessonWords(lesson, nameOf, printerOf)}{' '}
            <Button
              className="quiet"
              onPress={() => {
                dropLessons([lesson.id])
              }}
            >
              Forget
            </Button>
          </li>
        ))}
      </ul>
      <Button
        className="quiet"
        onPress={() => {
          dropLessons(lessons.map(({ id }) => id))
        }}
      >
        Forget all of them
      </Button>
    </details>
  )
}

/** "PETG on the scale, printed on Workhorse: 3.1 % above calculated, ± 2 %." */
function lessonWords(
  { of, materialIds, printerId, ratio, noise }: Lesson,
  nameOf: (id: string) => string,
  printerOf: (id: string) => string,
): string {
  const off = formatNumber(Math.abs(ratio - 1) * 100, undefined, 1)
  const reach = formatNumber(noise * 100, undefined, 1)
  const way = off === '0' ? 'as calculated' : `${off} % ${ratio < 1 ? 'below' : 'above'} calculated`
  const read =
    of === 'time' ? 'A print’s time' : `${materialIds.map(nameOf).join(', ')} on the scale, printed`
  return `${read} on ${printerOf(printerId)}: ${way}, ± ${reach} %.`
}
