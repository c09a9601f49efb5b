import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import type { PartFigures } from '../../core/model/figures.ts'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import { partFigures } from '../../core/figures/part.ts'
import { formatHours, formatMass } from '../../core/words/format.ts'
import { LEAST_OVERHANG_MM2 } from '../../core/mesh/overhang.ts'
import type { PoseOption } from '../../core/mesh/poseOptions.ts'
import type { Pose } from '../../core/model/settings.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import { useActions, useReadState } from '../appContext.ts'
import { showLength, showArea } from '../show.ts'

interface PoseTrialsProps {
  readonly row: LedgerRow
  readonly choose: (pose: Pose) => void
}

/**
 * The faces a part can lie on, each with what it would cost. Nothing is counted before the list is
 * asked for.
 */
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
  /** By the part's recipe; null while its layers are being counted. */
  readonly figures: PartFigures | null
  /**
   * With supports, where the recipe has none; null before it is counted and where nothing hangs
   * over.
   */
  readonly supported: PartFigures | null
}

function Trials({ row, choose }: PoseTrialsProps) {
  const { listPoses, tryRecipe } = useActions()
  const readState = useReadState()
  const [trials, setTrials] = useState<readonly Trial[] | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const { part, material } = row
  const { id, meshHash, unit, recipe, zones } = part

  useEffect(() => {
    const abort = new AbortController()
    const { signal } = abort
    const note = (option: PoseOption, found: Partial<Trial>) => {
      setTrials(
        (before) =>
          before?.map((trial) => (trial.option === option ? { ...trial, ...found } : trial)) ??
          null,
      )
    }
    const count = async (option: PoseOption, supports: boolean): Promise<PartFigures | null> => {
      const census = await tryRecipe(id, { supports }, signal, option.pose)
      if (census === null || signal.aborted) return null
      const { printer, prices } = readState().frame
      const laid = laidRecipe({ recipe: { ...recipe, supports }, zones }, printer)
      return partFigures(census, laid, material, printer, prices)
    }
    const run = async () => {
      setTrouble(null)
      const options = await listPoses(id)
      if (signal.aborted) return
      setTrials(options.map((option) => ({ option, figures: null, supported: null })))
      for (const option of options) {
        const figures = await count(option, recipe.supports)
        if (figures === null) return
        note(option, { figures })
      }
      if (recipe.supports) return
      for (const option of options.filter(hangsOver)) {
        const supported = await count(option, true)
        if (supported === null) return
        note(option, { supported })
      }
    }
    run().catch((error: unknown) => {
      if (!signal.aborted) setTrouble(error instanceof Error ? error.message : String(error))
    })
    return () => {
      abort.abort()
    }
  }, [listPoses, tryRecipe, readState, id, meshHash, unit, recipe, zones, material])

  if (trouble !== null) return <p className="hint">{trouble}</p>
  if (trials === null) return <p className="hint">Looking for flat faces.</p>
  if (trials.length === 0) {
    return <p className="hint">It has no flat face to stand on: turn it by hand, or support it.</p>
  }
  const present = part.pose.rotateDeg.join(' ')
  return (
    <>
      <p className="hint">Grams and hours are of one piece printed by itself, as calculated.</p>
      <ol className="faces">
        {trials.map((trial, i) => {
          const { option } = trial
          const turns = option.pose.rotateDeg.join(' ')
          return (
            <li key={turns}>
              <Button
                className="quiet"
                onPress={() => {
                  choose(option.pose)
                }}
              >
                {option.name}
                {i === 0 ? ' (best guess)' : ''}
              </Button>
              {turns === present ? <small> (as it lies now)</small> : null}
              <p className="hint">
                {effect(trial, recipe.supports)}; {lyingWords(option)}
              </p>
            </li>
          )
        })}
      </ol>
    </>
  )
}

function hangsOver({ overhangMm2 }: PoseOption): boolean {
  return overhangMm2 >= LEAST_OVERHANG_MM2
}

function effect({ option, figures, supported }: Trial, hasSupports: boolean): string {
  if (figures === null) return 'counting its layers'
  const own = `${formatMass(figures.massG.mid)}, ${formatHours(figures.timeS.mid)}`
  if (hasSupports) {
    const supportG = supportOf(figures)
    return `${own}, ${supportG > 0 ? `${formatMass(supportG)} of it support` : 'no support needed'}`
  }
  if (!hangsOver(option)) return `${own}, no support needed`
  if (supported === null) return `${own}, counting the support it needs`
  const supportG = supportOf(supported)
  if (supportG === 0) return `${own}, no support needed`
  const longer = formatHours(Math.max(0, supported.timeS.mid - figures.timeS.mid))
  return `${own}, with supports ${formatMass(supportG)} and ${longer} more`
}

/** Grams that are thrown away. */
function supportOf({ supportMm3, depositMm3, spoolG }: PartFigures): number {
  return depositMm3 > 0 ? (supportMm3 / depositMm3) * spoolG.mid : 0
}

function lyingWords(option: PoseOption): string {
  const { flatAreaMm2, overhangMm2, heightMm, holes, holesUpright } = option
  const upright = holes === 0 ? '' : `, ${holesUpright} of ${holes} holes upright`
  const over = hangsOver(option)
    ? `${showArea(overhangMm2)} hang over or bridge a gap`
    : 'nothing hangs over'
  return `${showArea(flatAreaMm2)} on the bed, ${showLength(heightMm, 1)} high, ${over}${upright}`
}
