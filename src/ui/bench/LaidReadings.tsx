import { Button } from 'react-aria-components'
import type { PartFigures } from '../../core/model/figures.ts'
import type { LaidReading } from '../../core/model/readings.ts'
import { fateWords } from '../../core/words/learned.ts'
import { formatHours, formatNumber } from '../../core/words/format.ts'
import { dayOf } from '../../core/words/day.ts'
import { frameSum } from '../../state/store/derived.ts'
import { newId } from '../../state/store/newId.ts'
import type { ReadToolpath } from '../../state/store/types.ts'
import { useActions, useAppState } from '../appContext.ts'

const NONE: readonly LaidReading[] = []

interface TakeReadingProps {
  readonly toolpath: ReadToolpath
  readonly partId: string
  readonly counted: PartFigures
  /** Settings that the file and the part do not share. */
  readonly differing: readonly string[]
}

/** Lets a file teach what its moves show; only while it was made as the part is. */
export function TakeReading({ toolpath, partId, counted, differing }: TakeReadingProps) {
  const { putReadings } = useActions()
  const laid = useAppState((state) => state.frame.laid) ?? NONE
  const startS = useAppState((state) => state.frame.printer.startS)
  const { fileName, figures } = toolpath
  const isTaken = laid.some((one) => one.partId === partId && one.fileName === fileName)
  if (isTaken) return null
  if (differing.length > 0) {
    return (
      <p className="hint">
        As a reading it would teach how your printer lays, were it made as the part is:{' '}
        {differing.join(', ')} {differing.length === 1 ? 'differs' : 'differ'}.
      </p>
    )
  }
  return (
    <p>
      <Button
        className="outlined"
        onPress={() => {
          const reading: LaidReading = {
            id: `laid-${newId()}`,
            partId,
            fileName,
            depositMm3: figures.layersMm3,
            calculatedMm3: counted.depositMm3,
            timeS: figures.timeS,
            calculatedS: Math.max(1, counted.timeS.mid - startS),
            date: dayOf(new Date()),
            trusted: false,
          }
          putReadings({ laid: [...laid, reading] }, 'take a printer file as a reading')
        }}
      >
        Take it as a reading
      </Button>{' '}
      <span className="hint">
        What it lays more or less than calculated, and its hours, then count for every part.
      </span>
    </p>
  )
}

/** Files that were taken as readings, and what came of them. */
export function LaidList() {
  const { putReadings } = useActions()
  const laid = useAppState((state) => state.frame.laid) ?? NONE
  const { readings } = useAppState(frameSum)
  if (laid.length === 0) return null
  return (
    <ul className="learned-list" aria-label="Printer files taken as readings">
      {laid.map((one) => {
        const plastic = readings.find(({ id }) => id === one.id)
        const time = readings.find(({ id }) => id === `${one.id}:time`)
        return (
          <li key={one.id}>
            {plastic?.name ?? one.fileName}: {formatNumber(one.depositMm3 / 1000)} cm³
            {plastic === undefined ? '' : `, ${fateWords(plastic.fate, plastic.ratio)}`};{' '}
            {formatHours(one.timeS)}
            {time === undefined ? '' : `, ${fateWords(time.fate, time.ratio)}`}{' '}
            <Button
              className="quiet"
              onPress={() => {
                const rest = laid.filter(({ id }) => id !== one.id)
                putReadings({ laid: rest }, 'take out a printer file')
              }}
            >
              Take out
            </Button>
          </li>
        )
      })}
    </ul>
  )
}
