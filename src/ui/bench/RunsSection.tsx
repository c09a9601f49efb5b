import '../styles/runs.css'
import { RUNS_DEFAULTS } from '../../core/data/runs.ts'
import { RUN_LIMITS } from '../../core/data/limits.ts'
import type { PrintOrder, RunSettings, RunWay } from '../../core/model/runs.ts'
import { finishOf, type Finish } from '../../core/runs/finish.ts'
import { formatHours, formatMoney } from '../../core/words/format.ts'
import { Section } from '../aircraft/Section.tsx'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import { PrinterList } from './PrinterList.tsx'
import { RunPlans } from './RunPlans.tsx'
import { SpoolShelf } from './SpoolShelf.tsx'
import { usePrintRuns, type PrintRuns } from './usePrintRuns.ts'
import { frameSum, isLaying } from '../../state/store/derived.ts'

const WAY_NAMES: Readonly<Record<RunWay, string>> = {
  'fewest beds': 'as few beds as it goes',
  evenings: 'evenings, long ones overnight',
  'least loss': 'least lost to failed prints',
}
const ORDER_NAMES: Readonly<Record<PrintOrder, string>> = {
  together: 'all together',
  'one at a time': 'one at a time',
}

/** What goes on the bed tonight: the frame's pieces as print runs, drawn to scale. */
export function RunsSection() {
  const runs = usePrintRuns()
  const settings = useAppState((state) => state.frame.runs ?? RUNS_DEFAULTS)
  const hasParts = useAppState((state) => state.frame.parts.length > 0)
  if (!hasParts) return null
  return (
    <Section title="Print runs" summary={<RunsWords runs={runs} />}>
      <div className="craft-full runs">
        <RunFields settings={settings} runs={runs} />
        <PrinterList />
        {runs === null ? null : <RunPlans runs={runs} />}
        <SpoolShelf runs={runs} />
      </div>
    </Section>
  )
}

function RunsWords({ runs }: { readonly runs: PrintRuns | null }) {
  const laying = useAppState(isLaying)
  const timeS = useAppState((state) => frameSum(state).withSpares.timeS)
  const isCounting = useAppState((state) => state.runs === null)
  if (runs === null) {
    return isCounting ? <>being laid; every layer has to be counted first</> : <>being drawn</>
  }
  const { told, alone } = runs
  const onSeveral = new Set(told.map(({ printer }) => printer.id)).size > 1
  const finish = finishOf(told.map((run) => ({ printerId: run.printer.id, timeS: run.timeS.mid })))
  if (told.length === 0) return <>{alone === 0 ? 'nothing to lay yet' : 'no piece could be laid'}</>
  const count = `${told.length} ${told.length === 1 ? 'print run' : 'print runs'}`
  return (
    <>
      {formatHours(timeS.mid)} in {count}
      {alone === 0 ? '' : ` and ${alone} by ${alone === 1 ? 'itself' : 'themselves'}`}, spares too
      {onSeveral ? `; side by side done in ${formatHours(finish.sideBySideS)}` : ''}
      {laying ? '; newer ones are being laid' : ''}
    </>
  )
}

/** One figure where it makes no difference. */
function finishWords({ inTurnS, sideBySideS }: Finish): string {
  const all = formatHours(inTurnS)
  return sideBySideS < inTurnS ? `${all}, side by side ${formatHours(sideBySideS)}` : all
}

interface RunFieldsProps {
  readonly settings: RunSettings
  readonly runs: PrintRuns | null
}

function RunFields({ settings, runs }: RunFieldsProps) {
  const { putRuns } = useActions()
  const currency = useAppState((state) => state.frame.prices.currency)
  const wayDetail = (way: RunWay): { readonly detail?: string } => {
    const other = runs?.ways[way]
    if (other === undefined) return {}
    const { count, finish, cost, failures, mostLost } = other
    const money = (value: number): string => formatMoney(value, currency)
    return {
      detail:
        `${count} runs, ${finishWords(finish)}, ${money(cost)}, of it ${money(failures)} for what fails; ` +
        `a full bed that does loses ${money(mostLost)}`,
    }
  }
  const inTurn = settings.order === 'one at a time'
  return (
    <div className="run-fields">
      <Choice
        label="Divided for"
        options={(Object.keys(WAY_NAMES) as RunWay[]).map((id) => ({
          id,
          name: WAY_NAMES[id],
          ...wayDetail(id),
        }))}
        value={settings.way}
        onChange={(way) => {
          putRuns({ way }, 'divide the print runs')
        }}
      />
      <Choice
        label="Pieces of a run"
        options={(Object.keys(ORDER_NAMES) as PrintOrder[]).map((id) => ({
          id,
          name: ORDER_NAMES[id],
        }))}
        value={settings.order}
        onChange={(order) => {
          putRuns({ order }, 'choose the print order')
        }}
      />
      <NumberBox
        label="An evening"
        limits={RUN_LIMITS.eveningH}
        value={settings.eveningH}
        step={0.5}
        unit="h"
        onChange={(eveningH) => {
          putRuns({ eveningH }, 'change the evening')
        }}
      />
      <NumberBox
        label="Between pieces"
        limits={RUN_LIMITS.gapMm}
        value={settings.gapMm}
        unit="mm"
        onChange={(gapMm) => {
          putRuns({ gapMm }, 'space the pieces')
        }}
      />
      <NumberBox
        label="Edge of the bed"
        limits={RUN_LIMITS.marginMm}
        value={settings.marginMm}
        unit="mm"
        onChange={(marginMm) => {
          putRuns({ marginMm }, 'keep the edge of the bed free')
        }}
      />
      {inTurn ? (
        <>
          <NumberBox
            label="Round the nozzle"
            limits={RUN_LIMITS.headMm}
            value={settings.headMm}
            unit="mm"
            hint="what the head needs free"
            onChange={(headMm) => {
              putRuns({ headMm }, 'measure the head')
            }}
          />
          <NumberBox
            label="Below the rail"
            limits={RUN_LIMITS.underHeadMm}
            value={settings.underHeadMm}
            unit="mm"
            hint="what passes over a finished piece"
            onChange={(underHeadMm) => {
              putRuns({ underHeadMm }, 'measure below the rail')
            }}
          />
        </>
      ) : null}
    </div>
  )
}
