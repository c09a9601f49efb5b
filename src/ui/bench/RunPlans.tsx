import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { RUNS_DEFAULTS } from '../../core/data/runs.ts'
import { failingShare } from '../../core/figures/cost.ts'
import type { Spot } from '../../core/model/runs.ts'
import { assignSpools, drinksWater } from '../../core/runs/assignSpools.ts'
import { bedFaults, type BedFault } from '../../core/runs/bedFaults.ts'
import { middleOf, moveTo, tenth, turnTo } from '../../core/runs/moveSpot.ts'
import { allPrinters, bedOf } from '../../core/runs/runPrinters.ts'
import { dryingWords, unfitWords } from '../../core/runs/sayings.ts'
import type { RunTold } from '../../core/runs/tellRuns.ts'
import { formatHours, formatMass, formatMoney, formatRange } from '../../core/words/format.ts'
import { toldWords } from '../../core/words/toldWords.ts'
import { useActions, useAppState } from '../appContext.ts'
import { onOneLine, showLength, showNumber } from '../show.ts'
import { Choice } from '../fields/Choice.tsx'
import { BedPlan } from './BedPlan.tsx'
import { EveningList } from './EveningList.tsx'
import { NO_SPOOLS } from './noSpools.ts'
import { RunClock } from './RunClock.tsx'
import { SpotFields } from './SpotFields.tsx'
import type { PrintRuns } from './usePrintRuns.ts'

/** A piece by its run and its place in it. */
interface Chosen {
  readonly run: number
  readonly at: number
}

/** The beds with their pieces, which are moved by hand, and what each run takes. */
export function RunPlans({ runs }: { readonly runs: PrintRuns }) {
  const { putRuns } = useActions()
  const parts = useAppState((state) => state.frame.parts)
  const own = useAppState((state) => state.frame.printer)
  const others = useAppState((state) => state.frame.printers)
  const printers = allPrinters({ printer: own, ...(others && { printers: others }) })
  const settings = useAppState((state) => state.frame.runs ?? RUNS_DEFAULTS)
  const numbers = useMemo(() => new Map(parts.map(({ id }, i) => [id, i + 1])), [parts])
  const [chosen, setChosen] = useState<Chosen | null>(null)
  const [refusal, setRefusal] = useState<string | null>(null)
  const { told, unfit, plans } = runs
  const widestMm = Math.max(...told.map(({ printer }) => printer.bedMm[0]))
  const nameOf = (id: string): string => parts.find((part) => part.id === id)?.name ?? ''
  const put = (byHand: readonly (readonly Spot[])[], what: string, gesture?: string) => {
    setRefusal(null)
    putRuns({ byHand: byHand.filter((spots) => spots.length > 0) }, what, gesture)
  }
  const all = told.map(({ spots }) => spots)
  const replace = ({ run, at }: Chosen, spot: Spot, what: string, gesture?: string) => {
    put(
      all.map((spots, i) => (i === run ? spots.with(at, spot) : spots)),
      what,
      gesture,
    )
  }
  const lyingAt = ({ run, at }: Chosen) => {
    const spot = all[run]?.[at]
    const outline = spot && plans[spot.partId]?.outline
    return spot === undefined || outline === undefined ? null : { spot, outline }
  }
  const pass = ({ run, at }: Chosen, to: number, toMm: readonly [number, number]) => {
    const piece = lyingAt({ run, at })
    const [from, there] = [told[run], told[to]]
    if (piece === null || from === undefined || to === run) return
    if (there !== undefined && !isAlike(from, there)) {
      setRefusal(
        `${nameOf(piece.spot.partId)} stays where it was: run ${to + 1} is of ${there.material} in ` +
          `layers of ${showLength(there.layerMm, 2)}, and a run has one plastic and one layer height.`,
      )
      return
    }
    const toTenths = [tenth(toMm[0]), tenth(toMm[1])] as const
    const moved = onBedOf(there ?? from, moveTo(piece.spot, piece.outline, toTenths))
    const rest = all.map((spots, i) => (i === run ? spots.toSpliced(at, 1) : spots))
    const next =
      there === undefined
        ? [...rest, [moved]]
        : rest.map((spots, i) => (i === to ? [...spots, moved] : spots))
    put(next, 'move a piece to another run')
    // The run it left may be gone, and those behind it one further up.
    const isGone = rest[run]?.length === 0
    const place = Math.min(to, next.length - 1)
    const number = isGone && place > run ? place - 1 : place
    setChosen({ run: number, at: (next[place]?.length ?? 1) - 1 })
  }
  /** A whole run on another printer, as it lies about the middle of the bed. */
  const printOn = (index: number, id: string) => {
    const run = told[index]
    const printer = printers.find((one) => one.id === id)
    if (run === undefined || printer === undefined) return
    const byMm = [0, 1].map((k) => ((printer.bedMm[k] ?? 0) - (run.printer.bedMm[k] ?? 0)) / 2)
    const moved = run.spots.map((spot) =>
      onBedOf(
        { printer },
        { ...spot, xMm: spot.xMm + (byMm[0] ?? 0), yMm: spot.yMm + (byMm[1] ?? 0) },
      ),
    )
    put(all.with(index, moved), `print run ${run.number} on ${printer.name}`)
  }
  const onBedOf = ({ printer }: Pick<RunTold, 'printer'>, spot: Spot): Spot => {
    const { printerId: _old, ...rest } = spot
    return printer.id === own.id ? rest : { ...rest, printerId: printer.id }
  }
  const spools = useAppState((state) => state.workshop.spools) ?? NO_SPOOLS
  const plan = useMemo(() => assignSpools(told, spools), [told, spools])
  return (
    <>
      {unfit.map((why) => (
        <p key={why.partId} className="field-note wrong-text">
          {unfitWords(nameOf(why.partId), why)}
        </p>
      ))}
      {settings.byHand === undefined || settings.byHand.length === 0 ? null : (
        <p className="field-note">
          Placed by hand: {settings.byHand.length} of {told.length} runs.{' '}
          <Button
            className="outlined"
            onPress={() => {
              setChosen(null)
              put([], 'lay the print runs again')
            }}
          >
            Lay again
          </Button>
        </p>
      )}
      <p role="status" className="field-note wrong-text">
        {refusal}
      </p>
      <ol className="run-list">
        {told.map((run, index) => {
          const { bedMm } = run.printer
          const bed = bedOf(run.printer, settings)
          const faults = bedFaults(run.spots, (id) => lyingPiece(plans, parts, id), bed)
          const wrong = new Set(
            faults.flatMap((fault) =>
              fault.why === 'overlap' ? [fault.at, fault.with] : [fault.at],
            ),
          )
          const here = chosen?.run === index ? chosen : null
          const piece = here && lyingAt(here)
          return (
            <li key={run.number} className="run">
              <BedPlan
                run={run}
                plans={plans}
                bedMm={bedMm}
                widestMm={widestMm}
                numbers={numbers}
                title={`Bed of run ${run.number} from above: ${pieceWords(run)}`}
                wrong={wrong}
                chosen={here?.at ?? null}
                onChoose={(at) => {
                  setChosen({ run: index, at })
                }}
                onMove={(at, [dx, dy], steps) => {
                  const moved = lyingAt({ run: index, at })
                  if (moved === null) return
                  const [x, y] = middleOf(moved.spot, moved.outline)
                  const spot = moveTo(moved.spot, moved.outline, [tenth(x + dx), tenth(y + dy)])
                  const gesture = steps ? `spot ${index} ${at}` : undefined
                  replace({ run: index, at }, spot, 'move a piece', gesture)
                }}
                onTurn={(at, byDeg) => {
                  const turned = lyingAt({ run: index, at })
                  if (turned === null) return
                  const spot = turnTo(turned.spot, turned.outline, turned.spot.turnDeg + byDeg)
                  replace({ run: index, at }, spot, 'turn a piece', `turn ${index} ${at}`)
                }}
                onPass={(at, to, toMm) => {
                  pass({ run: index, at }, to, toMm)
                }}
              />
              <RunFigures run={run} />
              {printers.length === 1 ? null : (
                <Choice
                  label={`Run ${run.number} on`}
                  value={run.printer.id}
                  options={printers.map(({ id, name }) => ({ id, name: toldWords(name) }))}
                  onChange={(id) => {
                    printOn(index, id)
                  }}
                />
              )}
              <RunSpool run={run} spoolId={plan.runs[index] ?? null} />
              <RunClock run={run} />
              {faults.map((fault) => (
                <p key={faultKey(fault)} className="wrong-text">
                  {faultWords(fault, (at) => nameOf(run.spots[at]?.partId ?? ''))}
                </p>
              ))}
              {here === null || piece === null ? null : (
                <SpotFields
                  name={nameOf(piece.spot.partId)}
                  spot={piece.spot}
                  outline={piece.outline}
                  run={index}
                  runs={told.filter((one) => isAlike(one, run)).map(({ number }) => number - 1)}
                  isCoupon={settings.coupons?.includes(piece.spot.partId) === true}
                  onCoupon={(isCoupon) => {
                    const { partId } = piece.spot
                    const rest = (settings.coupons ?? []).filter((id) => id !== partId)
                    setChosen(null)
                    putRuns(
                      { coupons: isCoupon ? [...rest, partId] : rest },
                      isCoupon ? 'print a part first' : 'print a part in its turn',
                    )
                  }}
                  onPlace={(spot, what) => {
                    replace(here, spot, what)
                  }}
                  onPass={(to) => {
                    const [wide, deep] = (to === 'new' ? run : (told[to] ?? run)).printer.bedMm
                    pass(here, to === 'new' ? told.length : to, [wide / 2, deep / 2])
                  }}
                />
              )}
            </li>
          )
        })}
      </ol>
      <EveningList told={told} eveningH={settings.eveningH} />
      <p className="hint">
        Beds of {bedWords(told)} from above, front edge below, coupons first, then what other parts
        are joined to, else the shortest, so that what does not fit shows early. Drag a piece, also
        to another bed, or move it with the arrow keys and turn it with R. A run’s hours and money
        are shared among its pieces by what each would take alone; so the list’s rows add up to the
        head. Stay near while it prints, as your printer’s maker and local rules ask; a smoke alarm
        belongs beside one left overnight.
      </p>
    </>
  )
}

/** The sizes of beds there are, each once. */
function bedWords(told: readonly RunTold[]): string {
  const sizes = told.map(
    ({ printer: { bedMm } }) => `${showLength(bedMm[0], 0)} × ${showLength(bedMm[1], 0)}`,
  )
  return [...new Set(sizes)].join(' and ')
}

function isAlike(a: RunTold, b: RunTold): boolean {
  return a.materialId === b.materialId && a.layerMm === b.layerMm
}

function lyingPiece(
  plans: PrintRuns['plans'],
  parts: readonly { readonly id: string; readonly recipe: { readonly brimMm: number } }[],
  id: string,
) {
  const outline = plans[id]?.outline
  const brimMm = parts.find((part) => part.id === id)?.recipe.brimMm
  return outline === undefined || brimMm === undefined ? null : { outline, brimMm }
}

function faultKey(fault: BedFault): string {
  return `${fault.at} ${fault.why === 'overlap' ? fault.with : 'edge'}`
}

function faultWords(fault: BedFault, nameOf: (at: number) => string): string {
  return fault.why === 'edge'
    ? `${nameOf(fault.at)} reaches over the edge of the bed.`
    : `${nameOf(fault.at)} and ${nameOf(fault.with)} lie on each other.`
}

function RunFigures({ run }: { readonly run: RunTold }) {
  const prices = useAppState((state) => state.frame.prices)
  const eveningH = useAppState((state) => (state.frame.runs ?? RUNS_DEFAULTS).eveningH)
  const { material, layerMm, timeS, massG, cost, bedShare, lostAtEnd } = run
  const isNight = timeS.mid > eveningH * 3600
  const fails = failingShare(timeS.mid / 3600, prices)
  return (
    <>
      <p className="run-line">
        <strong>Run {run.number}</strong> {material}
        <span className="run-figures">
          {formatHours(timeS.mid)} · {formatMass(massG.mid)}
        </span>
      </p>
      <p className="quiet-text">{pieceWords(run)}</p>
      <p className="quiet-text">
        {formatRange(timeS, (value) => formatHours(value))},{' '}
        {formatRange(massG, (value) => formatMass(value))},{' '}
        {formatRange(cost, (value) => formatMoney(value, prices.currency))}
        {isNight ? ', longer than an evening' : ''}; layers of {onOneLine(showLength(layerMm, 2))},{' '}
        {bedShare < 0.01 ? `under ${showNumber(1, 0)}` : showNumber(100 * bedShare, 0)}
        {'\u{A0}'}% of the bed. {showNumber(100 * fails, 1)}
        {'\u{A0}'}% of such prints fail; one that does at its end loses{' '}
        {formatMoney(lostAtEnd, prices.currency)}.
      </p>
    </>
  )
}

/** The spool that finishes it, and a caution for a plastic that drinks. */
function RunSpool({ run, spoolId }: { readonly run: RunTold; readonly spoolId: string | null }) {
  const spools = useAppState((state) => state.workshop.spools) ?? NO_SPOOLS
  const number = spools.findIndex(({ id }) => id === spoolId) + 1
  return (
    <>
      <p className="quiet-text">
        {formatMass(run.spoolG.mid)} off the spool
        {spools.length === 0
          ? ''
          : number > 0
            ? `; spool ${number} finishes it`
            : '; no spool on the shelf finishes it'}
        .
      </p>
      {drinksWater(run.materialId) ? <p className="caution">{dryingWords(run.material)}</p> : null}
    </>
  )
}

function pieceWords({ pieces }: RunTold): string {
  return pieces.map(({ part, count }) => (count === 1 ? part : `${count} × ${part}`)).join(', ')
}
