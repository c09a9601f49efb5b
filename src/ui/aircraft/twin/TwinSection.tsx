import { memo, useMemo } from 'react'
import { flatness } from '../../../core/twin/flatness.ts'
import { PLATES } from '../../../core/data/plates.ts'
import { twinReport } from '../../../core/report/twinReport.ts'
import { isSoft } from '../../../core/report/twinEntry.ts'
import { ledgerRows, type LedgerRow } from '../../../state/derived.ts'
import { useAppState } from '../../appContext.ts'
import { Section } from '../Section.tsx'
import { useReportParts } from '../useReportParts.ts'
import { useShown } from '../ShownAircraft.tsx'
import { useAircraft } from '../useAircraft.ts'
import { ArmTable } from './ArmTable.tsx'
import { BreakChart } from './BreakChart.tsx'
import { PlateFields } from './PlateFields.tsx'
import { SeasonFields } from './SeasonFields.tsx'
import { SeasonTables } from './SeasonTables.tsx'
import { SidesTable } from './SidesTable.tsx'
import { TwinTable } from './TwinTable.tsx'

/** The same frame with its flat parts cut from plate. */
export function TwinSection() {
  const { aircraft } = useAircraft()
  const rows = useAppState(ledgerRows)
  const plate = PLATES[aircraft.twin.plate].name.toLowerCase()
  return (
    <Section title="Carbon twin" summary={`${flatWords(rows)} · ${plate}`}>
      {() => <TwinBody />}
    </Section>
  )
}

const TwinBody = memo(function TwinBody() {
  const { frame } = useShown()
  const { parts, shapes } = useReportParts()
  const report = useMemo(() => (parts === null ? null : twinReport(parts, frame)), [parts, frame])
  const { currency } = frame.prices
  return (
    <>
      <div className="craft-side">
        <PlateFields />
      </div>
      <div className="craft-main">
        {shapes.pending > 0 ? (
          <p className="hint" role="status">
            Looking at {shapes.pending} {shapes.pending === 1 ? 'mesh' : 'meshes'}…
          </p>
        ) : null}
        {shapes.failed.length > 0 ? (
          <p className="caution">No mesh to look at: {shapes.failed.join(', ')}.</p>
        ) : null}
        {report === null ? null : (
          <Comparison
            report={report}
            plate={PLATES[frame.aircraft.twin.plate].name}
            currency={currency}
          />
        )}
      </div>
      <div className="craft-full">
        {report === null ? null : (
          <>
            <h3>Part by part</h3>
            <TwinTable parts={report.twin.parts} shapes={shapes.shapes} currency={currency} />
            <ArmTable arms={report.twin.arms} />
          </>
        )}
        <h3>A season played out</h3>
        <SeasonFields frame={report?.season.carbonFrame ?? null} />
        {report === null ? null : <SeasonTables season={report.season} currency={currency} />}
      </div>
    </>
  )
})

interface ComparisonProps {
  readonly report: ReturnType<typeof twinReport>
  readonly plate: string
  readonly currency: string
}

/** The printed frame beside the carbon ones. */
function Comparison({ report: { twin, season }, plate, currency }: ComparisonProps) {
  return (
    <>
      {twin.sides.cut === null && twin.sides.bought === null ? (
        <p className="hint">
          No part lies flat, so none could be cut from plate, and no bought carbon frame is typed
          in: there is nothing to stand beside the printed frame.
        </p>
      ) : null}
      <SidesTable sides={twin.sides} plate={plate} currency={currency} parts={twin.parts} />
      {season.breaks === null ? null : (
        <BreakChart breaks={season.breaks} frame={season.carbonFrame} currency={currency} />
      )}
    </>
  )
}

function flatWords(rows: readonly LedgerRow[]): string {
  const flat = rows.filter(
    (row) => row.work.kind === 'done' && !isSoft(row) && flatness(row.work.census).kind !== 'no',
  ).length
  return flat === 1 ? 'one flat part' : `${flat === 0 ? 'no' : flat} flat parts`
}
