import { memo, useMemo, useState } from 'react'
import { flatness } from '../../../core/aircraft/twin/flatness.ts'
import { PLATES } from '../../../core/data/plates.ts'
import type { Frame } from '../../../core/model/frame.ts'
import { seasonReport } from '../../../core/aircraft/report/seasonReport.ts'
import { twinReport } from '../../../core/aircraft/report/twinReport.ts'
import type { ReportPart, TwinReport } from '../../../core/aircraft/report/types.ts'
import { isSoft } from '../../../core/aircraft/report/twinEntry.ts'
import { ledgerRows, type LedgerRow } from '../../../state/store/derived.ts'
import { useAppState } from '../../appContext.ts'
import { Section } from '../Section.tsx'
import type { PartShapes } from '../usePartShapes.ts'
import { useReportParts } from '../useReportParts.ts'
import { useShown } from '../ShownAircraft.tsx'
import { useAircraft } from '../useAircraft.ts'
import { ArmTable } from './ArmTable.tsx'
import { BreakChart } from './BreakChart.tsx'
import { PlateFields } from './PlateFields.tsx'
import { SeasonChart } from './SeasonChart.tsx'
import { SeasonFields } from './SeasonFields.tsx'
import { SeasonTables } from './SeasonTables.tsx'
import { SEASON_TABLES } from './seasonTwin.ts'
import { SidesTable } from './SidesTable.tsx'
import { BreaksByLoad } from './BreaksByLoad.tsx'
import { SolvedTwins } from './SolvedTwins.tsx'
import { useModelledParts, type SolvedPart } from './useModelledParts.ts'
import { TwinOutlines } from './TwinOutlines.tsx'
import { TwinTable } from './TwinTable.tsx'

/** The same frame with its flat parts cut from plate. */
export function TwinSection() {
  const { aircraft } = useAircraft()
  const rows = useAppState(ledgerRows)
  const plate = PLATES[aircraft.twin.plate].name.toLowerCase()
  return (
    <Section title="Carbon twin" help="carbon twin" summary={`${flatWords(rows)} · ${plate}`}>
      <TwinBody />
    </Section>
  )
}

const TwinBody = memo(function TwinBody() {
  const { frame, view } = useShown()
  const { parts: known, shapes } = useReportParts()
  const [wantsAll, setWantsAll] = useState(false)
  const { parts, solved, isDone } = useModelledParts(known, frame, wantsAll)
  const twin = useMemo(
    () => (parts === null ? null : twinReport(parts, view.sum, frame)),
    [parts, view, frame],
  )
  if (parts !== null && twin !== null) {
    return (
      <TwinAndSeason
        {...{ frame, parts, shapes, twin, solved, isDone, wantsAll }}
        onWantAll={() => {
          setWantsAll(true)
        }}
      />
    )
  }
  return (
    <>
      <div className="craft-side">
        <PlateFields />
      </div>
      <div className="craft-main">
        <MeshesLeft shapes={shapes} />
      </div>
    </>
  )
})

interface TwinAndSeasonProps {
  readonly frame: Frame
  readonly parts: readonly ReportPart[]
  readonly shapes: PartShapes
  readonly twin: TwinReport
  readonly solved: readonly SolvedPart[]
  readonly isDone: boolean
  readonly wantsAll: boolean
  readonly onWantAll: () => void
}

/**
 * A component of its own, so that twin and season are worked out in two steps, between which the
 * page takes input.
 */
function TwinAndSeason(props: TwinAndSeasonProps) {
  const { frame, parts, shapes, twin, solved, isDone, wantsAll, onWantAll } = props

  const { aircraft, carbon, prices } = frame
  const season = useMemo(
    () => seasonReport(aircraft.season, parts, twin.parts, twin.sides, carbon),
    [aircraft.season, parts, twin, carbon],
  )
  const { currency } = prices
  const { sides } = twin
  return (
    <>
      <div className="craft-side">
        <PlateFields />
      </div>
      <div className="craft-main">
        <MeshesLeft shapes={shapes} />
        {sides.cut === null && sides.bought === null ? (
          <p className="hint">
            No part lies flat, so none could be cut from plate, and no bought carbon frame is typed
            in: there is nothing to stand beside the printed frame.
          </p>
        ) : null}
        <SidesTable
          sides={sides}
          plate={PLATES[twin.plate].name}
          currency={currency}
          parts={twin.parts}
        />
        {season.breaks === null ? null : (
          <BreakChart breaks={season.breaks} frame={season.carbonFrame} currency={currency} />
        )}
      </div>
      <div className="craft-full">
        <h4>Part by part</h4>
        <TwinOutlines parts={twin.parts} shapes={shapes.shapes} />
        <TwinTable parts={twin.parts} shapes={shapes.shapes} currency={currency} />
        <SolvedTwins {...{ twin, isDone, wantsAll, onWantAll }} />
        <ArmTable arms={twin.arms} />
        <h4>A season played out</h4>
        <SeasonFields frame={season.carbonFrame} />
        <SeasonChart season={season} parts={frame.parts} currency={currency} />
        <div id={SEASON_TABLES}>
          <SeasonTables season={season} parts={frame.parts} currency={currency} />
        </div>
        <BreaksByLoad solved={solved} isAll={wantsAll && isDone} />
      </div>
    </>
  )
}

function MeshesLeft({ shapes: { pending, failed } }: { readonly shapes: PartShapes }) {
  return (
    <>
      {pending > 0 ? (
        <p className="hint" role="status">
          Looking at {pending} {pending === 1 ? 'mesh' : 'meshes'}…
        </p>
      ) : null}
      {failed.length > 0 ? (
        <p className="caution">No mesh to look at: {failed.join(', ')}.</p>
      ) : null}
    </>
  )
}

function flatWords(rows: readonly LedgerRow[]): string {
  const flat = rows.filter(
    (row) => row.work.kind === 'done' && !isSoft(row) && flatness(row.work.census).kind !== 'no',
  ).length
  return flat === 1 ? 'one flat part' : `${flat === 0 ? 'no' : flat} flat parts`
}
