import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components'
import { jointBoresOf } from '../../../core/aircraft/twin/partLoad.ts'
import { DRAFT_MM } from '../../../core/data/stiffness.ts'
import { laidRecipe } from '../../../core/figures/laidRecipe.ts'
import { partFigures } from '../../../core/figures/part.ts'
import { FACE_POSES, type FacePose } from '../../../core/mesh/pose.ts'
import type { PartFigures } from '../../../core/model/figures.ts'
import type { LoadPick } from '../../../core/stiffness/part/chooseLoad.ts'
import type { StiffPart } from '../../../core/stiffness/part/stiffPart.ts'
import { formatHours, formatMass } from '../../../core/words/format.ts'
import type { LedgerRow } from '../../../state/store/derived.ts'
import { useActions, useReadState } from '../../appContext.ts'
import { showNumber } from '../../show.ts'

interface WaysToLieProps {
  readonly row: LedgerRow
  readonly load: { readonly loadN: number; readonly tipG: number }
  readonly pick: LoadPick
}

interface Way {
  readonly face: FacePose
  /** Null while counted. */
  readonly figures: PartFigures | null
  readonly stiff: StiffPart | null
  readonly trouble: string | null
}

/**
 * The six ways the part can lie, each under the same load: grams, hours, stiffness, safety across
 * layers.
 */
export function WaysToLie(props: WaysToLieProps) {
  const { row, load, pick } = props
  const { part, material } = row
  // Of another recipe or load these would be none of its ways: begun anew.
  const key = JSON.stringify([part.recipe, part.pose, part.meshHash, material.id, load, pick])
  return <Ways key={key} {...props} />
}

function Ways({ row, load, pick }: WaysToLieProps) {
  const { tryRecipe, stiffenPart } = useActions()
  const readState = useReadState()
  const [ways, setWays] = useState<readonly Way[] | null>(null)
  const running = useRef<AbortController | null>(null)
  const { part, material } = row
  useEffect(() => () => running.current?.abort(), [])
  const start = () => {
    const abort = new AbortController()
    running.current = abort
    const { signal } = abort
    const note = (face: FacePose, found: Partial<Way>) => {
      if (signal.aborted) return
      setWays((all) => all?.map((way) => (way.face === face ? { ...way, ...found } : way)) ?? null)
    }
    const run = async () => {
      setWays(FACE_POSES.map((face) => ({ face, figures: null, stiff: null, trouble: null })))
      const { printer, prices, aircraft } = readState().frame
      const laid = laidRecipe(part, printer)
      for (const face of FACE_POSES) {
        const { pose } = face
        const census = await tryRecipe(part.id, {}, signal, pose)
        if (census === null || signal.aborted) return
        const figures = partFigures(census, laid, material, printer, prices)
        note(face, { figures })
        const outcome = await stiffenPart(
          part.id,
          {
            massG: figures.massG.mid,
            jointBores: jointBoresOf(part.id, aircraft),
            pick,
            pickPose: part.pose,
            ...load,
            cellMm: DRAFT_MM,
            wantTones: false,
          },
          { signal },
          { pose },
        )
        if (outcome === null || signal.aborted) return
        note(face, outcome.ok ? { stiff: outcome.value } : { trouble: outcome.problem.message })
      }
    }
    run().catch((error: unknown) => {
      if (signal.aborted) return
      const trouble = error instanceof Error ? error.message : String(error)
      setWays((all) => all?.map((way) => (way.stiff === null ? { ...way, trouble } : way)) ?? null)
    })
  }

  if (ways === null) {
    return (
      <div className="stiffness-run">
        <Button className="quiet" onPress={start}>
          Compare six ways to lie
        </Button>
      </div>
    )
  }
  return (
    <div className="stiffness-ways">
      <table>
        <caption>
          Six ways to lie, the same load, as drafts; one piece printed by itself, as calculated
        </caption>
        <thead>
          <tr>
            <th scope="col">Lies</th>
            <th scope="col" className="figures">
              One piece
            </th>
            <th scope="col" className="figures">
              Takes
            </th>
            <th scope="col" className="figures">
              N a mm
            </th>
            <th scope="col" className="figures">
              Strength over stress
            </th>
            <th scope="col">Breaks</th>
          </tr>
        </thead>
        <tbody>
          {ways.map((way) => (
            <WayRow key={way.face.face} way={way} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function WayRow({ way: { face, figures, stiff, trouble } }: { readonly way: Way }) {
  const safety = stiff?.figures.safety ?? null
  return (
    <tr>
      <th scope="row">{face.name}</th>
      <td className="figures">{figures === null ? '…' : formatMass(figures.massG.mid)}</td>
      <td className="figures">{figures === null ? '…' : formatHours(figures.timeS.mid)}</td>
      {trouble === null ? (
        <>
          <td className="figures">
            {stiff === null ? '…' : showNumber(stiff.figures.stiffness.mid, 2)}
          </td>
          <td className="figures">{safety === null ? '…' : showNumber(safety.factor.mid, 1)}</td>
          <td>{safety?.breaks ?? ''}</td>
        </>
      ) : (
        <td colSpan={3}>{trouble}</td>
      )}
    </tr>
  )
}
