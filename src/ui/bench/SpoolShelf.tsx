import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import { SPOOL_LIMITS } from '../../core/data/limits.ts'
import type { Spool } from '../../core/model/spools.ts'
import { assignSpools, KEPT_BACK_G, printableG } from '../../core/runs/assignSpools.ts'
import { materialsOf } from '../../state/store/materialOf.ts'
import { useActions, useAppState, useReadState } from '../appContext.ts'
import { tenthMass } from '../aircraft/words.ts'
import { Choice } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import { showMass } from '../show.ts'
import { NO_SPOOLS } from './noSpools.ts'
import type { PrintRuns } from './usePrintRuns.ts'

/** An empty reel as one maker's weighs (a blog of 2018: 223 g), until somebody weighs his own. */
const REEL_G = 223

/**
 * What stands on the builder's shelf, for every frame; what stays on each and what is to be bought.
 */
export function SpoolShelf({ runs }: { readonly runs: PrintRuns | null }) {
  const { putSpools } = useActions()
  const readState = useReadState()
  const spools = useAppState((state) => state.workshop.spools) ?? NO_SPOOLS
  const told = runs?.told
  const plan = useMemo(
    () => (told === undefined ? null : assignSpools(told, spools)),
    [told, spools],
  )
  const add = () => {
    const { frame } = readState()
    const materialId = frame.parts[0]?.materialId ?? materialsOf(frame)[0]?.id ?? 'pla'
    const id = `spool-${Date.now()}`
    putSpools([...spools, { id, materialId, grossG: 1000 + REEL_G, emptyG: REEL_G }])
  }
  return (
    <div className={spools.length === 0 ? 'spool-shelf screen-only' : 'spool-shelf'}>
      <h4>Spools on the shelf</h4>
      <p className="hint">
        As each stands on the scale, reel and all, and what its empty reel weighs. A run is printed
        from one spool; {showMass(KEPT_BACK_G)} are kept back on each, since no printer feeds the
        last metres.
      </p>
      <ol className="kept-list">
        {spools.map((spool, i) => (
          <SpoolRow
            key={spool.id}
            spool={spool}
            number={i + 1}
            leftG={plan?.leftG.get(spool.id) ?? null}
            onChange={(next) => {
              putSpools(next === null ? spools.toSpliced(i, 1) : spools.with(i, next))
            }}
          />
        ))}
      </ol>
      <Button className="outlined" onPress={add}>
        Put a spool on the shelf
      </Button>
      {plan === null || spools.length === 0
        ? null
        : plan.toBuy.map(({ materialId, material, neededG }) => (
            <p key={materialId} className="caution">
              No spool finishes {tenthMass(neededG)} of {material}: buy some, or divide the run.
            </p>
          ))}
    </div>
  )
}

interface SpoolRowProps {
  readonly spool: Spool
  readonly number: number
  /** After all runs; null while none are laid. */
  readonly leftG: number | null
  readonly onChange: (next: Spool | null) => void
}

function SpoolRow({ spool, number, leftG, onChange }: SpoolRowProps) {
  const frame = useAppState((state) => state.frame)
  const options = materialsOf(frame).map(({ id, name }) => ({ id, name }))
  return (
    <li>
      <Choice
        label={`Spool ${number}`}
        options={options}
        value={options.some(({ id }) => id === spool.materialId) ? spool.materialId : null}
        placeholder={spool.materialId}
        onChange={(materialId) => {
          onChange({ ...spool, materialId })
        }}
      />
      <NumberBox
        label={`Spool ${number} with its reel`}
        limits={SPOOL_LIMITS.grossG}
        value={spool.grossG}
        unit="g"
        onChange={(grossG) => {
          onChange({ ...spool, grossG })
        }}
      />
      <NumberBox
        label={`Empty reel ${number}`}
        limits={SPOOL_LIMITS.emptyG}
        value={spool.emptyG}
        unit="g"
        onChange={(emptyG) => {
          onChange({ ...spool, emptyG })
        }}
      />
      <span className="quiet-text">
        {tenthMass(printableG(spool))} to print
        {leftG === null ? '' : `, ${tenthMass(leftG)} after all runs`}
      </span>
      <Button
        className="quiet"
        onPress={() => {
          onChange(null)
        }}
      >
        Take off
      </Button>
    </li>
  )
}
