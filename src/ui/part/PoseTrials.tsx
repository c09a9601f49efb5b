import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import type { PartFigures } from '../../core/figures.ts'
import { partFigures } from '../../core/figures/part.ts'
import { formatHours, formatMass } from '../../core/figures/format.ts'
import type { PoseOption } from '../../core/geometry/poseOptions.ts'
import type { Pose } from '../../core/settings.ts'
import type { LedgerRow } from '../../state/derived.ts'
import { useActions, useReadState } from '../appContext.ts'
import { showNumber } from '../show.ts'

interface PoseTrialsProps {
  readonly row: LedgerRow
  readonly choose: (pose: Pose) => void
}

/** The faces a part can lie on, each with what it would cost. Nothing is counted before the list is asked for. */
export function PoseTrials({ row, choose }: PoseTrialsProps) {
  const [open, setOpen] = useState(false)
  return (
    <div className="offer">
      <Button
        className="quiet"
        aria-expanded={open}
        onPress={() => {
          setOpen(!open)
        }}
      >
        {open ? 'Close the list of faces' : 'Compare the faces it can lie on'}
      </Button>
      {open ? <Trials row={row} choose={choose} /> : null}
    </div>
  )
}

interface Trial {
  readonly option: PoseOption
  /** Null while its layers are being counted. */
  readonly figures: PartFigures | null
}

function Trials({ row, choose }: PoseTrialsProps) {
  const { listPoses, tryPose } = useActions()
  const readState = useReadState()
  const [trials, setTrials] = useState<readonly Trial[] | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const { part, material } = row
  const { id, meshHash, unit, recipe } = part

  useEffect(() => {
    const abort = new AbortController()
    const run = async () => {
      setTrouble(null)
      const options = await listPoses(id)
      if (abort.signal.aborted) return
      setTrials(options.map((option) => ({ option, figures: null })))
      for (const option of options) {
        const census = await tryPose(id, option.pose, abort.signal)
        if (census === null || abort.signal.aborted) return
        const { printer, prices } = readState().frame
        const figures = partFigures(census, recipe, material, printer, prices)
        setTrials(
          (before) =>
            before?.map((trial) => (trial.option === option ? { option, figures } : trial)) ?? null,
        )
      }
    }
    run().catch((error: unknown) => {
      if (!abort.signal.aborted) setTrouble(error instanceof Error ? error.message : String(error))
    })
    return () => {
      abort.abort()
    }
  }, [listPoses, tryPose, readState, id, meshHash, unit, recipe, material])

  if (trouble !== null) return <p className="hint">{trouble}</p>
  if (trials === null) return <p className="hint">Looking for flat faces.</p>
  if (trials.length === 0) {
    return <p className="hint">It has no flat face to stand on: turn it by hand, or support it.</p>
  }
  return (
    <ol className="faces">
      {trials.map(({ option, figures }, i) => (
        <li key={option.pose.rotateDeg.join(' ')}>
          <Button
            className="quiet"
            onPress={() => {
              choose(option.pose)
            }}
          >
            {option.name}
            {i === 0 ? ' (best guess)' : ''}
          </Button>
          <p className="hint">
            {figures === null ? 'counting its layers' : effect(figures)}; {facts(option)}
          </p>
        </li>
      ))}
    </ol>
  )
}

function effect(figures: PartFigures): string {
  const { massG, timeS, supportMm3, depositMm3, spoolG } = figures
  const supportG = depositMm3 > 0 ? (supportMm3 / depositMm3) * spoolG.mid : 0
  const support = supportMm3 > 0 ? `${formatMass(supportG)} support` : 'no support counted'
  return `${formatMass(massG.mid)}, ${formatHours(timeS.mid)}, ${support}`
}

function facts({ flatAreaMm2, overhangMm2, heightMm, holes, holesUpright }: PoseOption): string {
  const upright = holes === 0 ? '' : `, ${holesUpright} of ${holes} holes upright`
  const over =
    overhangMm2 < 1 ? 'nothing hangs over' : `${showNumber(overhangMm2 / 100, 1)} cm² hang over`
  return `${showNumber(flatAreaMm2 / 100, 1)} cm² on the bed, ${showNumber(heightMm, 1)} mm high, ${over}${upright}`
}
