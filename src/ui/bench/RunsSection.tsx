import '../styles/runs.css'
import { useMemo, type ReactNode } from 'react'
import { RUNS_DEFAULTS } from '../../core/data/runs.ts'
import { RUN_LIMITS } from '../../core/data/limits.ts'
import { failingShare } from '../../core/figures/cost.ts'
import type { PrintOrder, RunSettings, RunWay } from '../../core/model/runs.ts'
import { unfitWords } from '../../core/runs/sayings.ts'
import type { RunsTold, RunTold } from '../../core/runs/tellRuns.ts'
import { formatHours, formatMass, formatMoney, formatRange } from '../../core/words/format.ts'
import { Section } from '../aircraft/Section.tsx'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import { showLength, showNumber } from '../show.ts'
import { BedPlan } from './BedPlan.tsx'
import { usePrintRuns, type PrintRuns } from './usePrintRuns.ts'

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
  const told = runs?.told?.[settings.way] ?? null
  return (
    <Section
      title="Print runs"
      summary={
        told === null ? (
          runs === null ? (
            'being laid; every layer has to be counted first'
          ) : (
            'too many pieces to lay'
          )
        ) : told.runs.length === 0 ? (
          'nothing to lay yet'
        ) : (
          <RunsWords told={told} isOld={runs?.isOld === true} />
        )
      }
    >
      <div className="craft-full runs">
        <RunFields settings={settings} runs={runs} />
        {runs === null || told === null ? null : <RunPlans runs={runs} told={told} />}
      </div>
    </Section>
  )
}

function RunsWords({ told, isOld }: { readonly told: RunsTold; readonly isOld: boolean }) {
  const { runs, timeS, singlyS } = told
  const count = `${runs.length} ${runs.length === 1 ? 'print run' : 'print runs'}`
  return (
    <>
      {formatHours(timeS.mid)} in {count}, spares too; {formatHours(singlyS.mid)} if every piece
      were printed by itself, as the head counts{isOld ? '; newer ones are being laid' : ''}
    </>
  )
}

interface RunFieldsProps {
  readonly settings: RunSettings
  readonly runs: PrintRuns | null
}

function RunFields({ settings, runs }: RunFieldsProps) {
  const { putRuns } = useActions()
  const currency = useAppState((state) => state.frame.prices.currency)
  const wayDetail = (way: RunWay): { readonly detail?: string } => {
    const told = runs?.told?.[way]
    if (told === undefined) return {}
    const { runs: all, timeS, cost } = told
    return {
      detail: `${all.length} runs, ${formatHours(timeS.mid)}, ${formatMoney(cost, currency)} with what fails`,
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

function RunPlans({ runs, told }: { readonly runs: PrintRuns; readonly told: RunsTold }) {
  const parts = useAppState((state) => state.frame.parts)
  const bedMm = useAppState((state) => state.frame.printer.bedMm)
  const numbers = useMemo(() => new Map(parts.map(({ id }, i) => [id, i + 1])), [parts])
  const { unfit, plans } = runs.answer
  const nameOf = (id: string): string => parts.find((part) => part.id === id)?.name ?? ''
  return (
    <>
      {unfit.map((why) => (
        <p key={why.partId} className="field-note wrong-text">
          {unfitWords(nameOf(why.partId), why)}
        </p>
      ))}
      <ol className="run-list">
        {told.runs.map((run) => (
          <RunView
            key={run.number}
            run={run}
            plan={
              <BedPlan
                run={run}
                plans={plans}
                bedMm={bedMm}
                numbers={numbers}
                title={`Bed of run ${run.number} from above: ${pieceWords(run)}`}
              />
            }
          />
        ))}
      </ol>
      <p className="hint">
        Beds of {showLength(bedMm[0], 0)} × {showLength(bedMm[1], 0)} from above, front edge below,
        the shortest run first, so that what does not fit shows early. Stay near while it prints, as
        your printer’s maker and local rules ask; a smoke alarm belongs beside one left overnight.
      </p>
    </>
  )
}

interface RunViewProps {
  readonly run: RunTold
  readonly plan: ReactNode
}

function RunView({ run, plan }: RunViewProps) {
  const prices = useAppState((state) => state.frame.prices)
  const eveningH = useAppState((state) => (state.frame.runs ?? RUNS_DEFAULTS).eveningH)
  const { material, layerMm, timeS, massG, bedShare, lostAtEnd } = run
  const isNight = timeS.mid > eveningH * 3600
  const fails = failingShare(timeS.mid / 3600, prices)
  return (
    <li className="run">
      {plan}
      <p className="run-line">
        <strong>Run {run.number}</strong> {material}
        <span className="run-figures">
          {formatHours(timeS.mid)} · {formatMass(massG)}
        </span>
      </p>
      <p className="quiet-text">{pieceWords(run)}</p>
      <p className="quiet-text">
        {formatRange(timeS, (value) => formatHours(value))}
        {isNight ? ', longer than an evening' : ''}; layers of {showLength(layerMm, 2)},{' '}
        {bedShare < 0.01 ? `under ${showNumber(1, 0)}` : showNumber(100 * bedShare, 0)} % of the
        bed. {showNumber(100 * fails, 1)} % of such prints fail; one that does at its end loses{' '}
        {formatMoney(lostAtEnd, prices.currency)}.
      </p>
    </li>
  )
}

function pieceWords({ pieces }: RunTold): string {
  return pieces.map(({ part, count }) => (count === 1 ? part : `${count} × ${part}`)).join(', ')
}
