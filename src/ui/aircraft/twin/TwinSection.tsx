import { flatness } from '../../../core/twin/flatness.ts'
import { PLATES } from '../../../core/data/plates.ts'
import { isSoft } from '../../../core/report/twinEntry.ts'
import type { TwinSetup } from '../../../core/aircraft.ts'
import { ledgerRows, type LedgerRow } from '../../../state/derived.ts'
import { useAppState } from '../../appContext.ts'
import { Section } from '../Section.tsx'
import { useReport } from '../useReport.ts'
import { useAircraft, usePutAircraft } from '../useAircraft.ts'
import { BreakChart } from './BreakChart.tsx'
import { PlateFields } from './PlateFields.tsx'
import { SeasonBlock } from './SeasonBlock.tsx'
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

function TwinBody() {
  const { aircraft, currency } = useAircraft()
  const { report, shapes } = useReport()
  const putAircraft = usePutAircraft()
  const plate = PLATES[aircraft.twin.plate]
  const put = (patch: Partial<TwinSetup>) => {
    putAircraft({ twin: { ...aircraft.twin, ...patch } }, 'change the carbon twin')
  }
  const { twin, season } = report
  return (
    <>
      <div className="craft-side">
        <PlateFields twin={aircraft.twin} currency={currency} onChange={put} />
        <p className="caution">{plate.caution} Follow your local rules.</p>
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
        <SidesTable sides={twin.sides} plate={plate.name} currency={currency} parts={twin.parts} />
        {season.breaks === null ? null : (
          <BreakChart breaks={season.breaks} frame={season.carbonFrame} currency={currency} />
        )}
      </div>
      <div className="craft-full">
        <h3>Part by part</h3>
        <TwinTable
          parts={twin.parts}
          shapes={shapes.shapes}
          currency={currency}
          thicknessMm={aircraft.twin.thicknessMm}
          onChange={(thicknessMm) => {
            put({ thicknessMm })
          }}
        />
        <SeasonBlock
          setup={aircraft.season}
          season={season}
          twinParts={twin.parts}
          currency={currency}
        />
      </div>
    </>
  )
}

function flatWords(rows: readonly LedgerRow[]): string {
  const flat = rows.filter(
    (row) => row.work.kind === 'done' && !isSoft(row) && flatness(row.work.census).kind !== 'no',
  ).length
  return flat === 1 ? 'one flat part' : `${flat} flat parts`
}
