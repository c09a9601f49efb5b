import { READING_LIMITS } from '../../core/data/limits.ts'
import type { ClockTime } from '../../core/model/readings.ts'
import type { RunTold } from '../../core/runs/tellRuns.ts'
import { dayOf } from '../../core/words/day.ts'
import { useActions, useAppState } from '../appContext.ts'
import { NumberBox } from '../fields/NumberBox.tsx'

const NONE: readonly ClockTime[] = []

/**
 * What the clock said of a run as it was laid; it stands with the other times, and all hours
 * follow.
 */
export function RunClock({ run }: { readonly run: RunTold }) {
  const { putReadings } = useActions()
  const clocks = useAppState((state) => state.frame.clocks) ?? NONE
  const ownId = useAppState((state) => state.frame.printer.id)
  const { number, printer, pieces, calculatedS } = run
  return (
    <NumberBox
      label={`Run ${number} took`}
      limits={READING_LIMITS.clockMin}
      value={null}
      digits={1}
      unit="min"
      onChange={(minutes) => {
        const now = new Date()
        const time: ClockTime = {
          id: `clock-${now.getTime()}`,
          pieces: Object.fromEntries(pieces.map(({ partId, count }) => [partId, count])),
          timeS: minutes * 60,
          calculatedS,
          date: dayOf(now),
          trusted: false,
          beside: true,
          ...(printer.id === ownId ? {} : { printerId: printer.id }),
        }
        putReadings({ clocks: [...clocks, time] }, 'keep a print’s time')
      }}
      onEmpty={() => undefined}
    />
  )
}
