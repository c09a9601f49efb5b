import '../../styles/stiffness.css'
import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import { loadOf } from '../../../core/aircraft/twin/loadOf.ts'
import { LOAD_LIMITS } from '../../../core/data/limits.ts'
import { END_NAMES, type LoadPick } from '../../../core/stiffness/part/chooseLoad.ts'
import type { LedgerRow } from '../../../state/store/derived.ts'
import { useAppState } from '../../appContext.ts'
import { Choice } from '../../fields/Choice.tsx'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { keepLoad, useKeptLoad } from './keptLoads.ts'
import { StiffnessAnswer } from './StiffnessAnswer.tsx'
import { KnockTest } from './KnockTest.tsx'
import { settingsOf, useStiffness } from './useStiffness.ts'
import { WaysToLie } from './WaysToLie.tsx'
import { END_WORDS } from './words.ts'

const ENDS_TO_PICK = END_NAMES.map((id) => ({ id, name: END_WORDS[id] }))

/**
 * How the part gives, breaks and rings: held and pushed as chosen, by the cells its layers fill.
 */
export function StiffnessBlock({ row }: { readonly row: LedgerRow }) {
  const aircraft = useAppState((state) => state.frame.aircraft)
  const habits = useAppState((state) => state.frame.printer.habits)
  const typed = useKeptLoad(row.part.id)
  const { pick, loadN: typedN } = typed
  const setPick = (next: LoadPick) => keepLoad(row.part.id, { ...typed, pick: next })
  const setTypedN = (next: number | null) => keepLoad(row.part.id, { ...typed, loadN: next })
  const now = useMemo(() => loadOf(row.part, aircraft, typed), [row.part, aircraft, typed])
  const { loadN, tipG, from } = now
  const load = useMemo(() => ({ loadN, tipG }), [loadN, tipG])
  const settings = settingsOf(row, load, pick, habits)
  const { found, progress, trouble, start, stop } = useStiffness(row, load, pick, settings)
  const isOld = found !== null && found.of !== settings
  const reckonedHz = isOld ? null : (found?.part.figures.hz[0] ?? null)
  return (
    <section className="stiffness" aria-label="How it gives, breaks and rings">
      <h3>How it gives, breaks and rings</h3>
      <div className="stiffness-fields">
        <Choice
          label="Held"
          value={pick.hold}
          options={[{ id: 'auto', name: 'At its joints, or an end' }, ...ENDS_TO_PICK]}
          onChange={(hold) => setPick({ ...pick, hold })}
        />
        <Choice
          label="Pushed"
          value={pick.push}
          options={[{ id: 'auto', name: 'At the free end' }, ...ENDS_TO_PICK]}
          onChange={(push) => setPick({ ...pick, push })}
        />
        <Choice
          label="Way"
          value={pick.direction}
          options={[
            { id: 'auto', name: 'Up, or sideways' },
            { id: 'x', name: 'Left to right (x)' },
            { id: 'y', name: 'Front to back (y)' },
            { id: 'z', name: 'Up (z)' },
          ]}
          onChange={(direction) => setPick({ ...pick, direction })}
        />
        <NumberBox
          label="Load"
          limits={LOAD_LIMITS.loadN}
          value={loadN}
          unit="N"
          hint={
            typedN === null && from === 'motor'
              ? 'Full throttle of one motor.'
              : 'A plain load, to compare parts by.'
          }
          onChange={setTypedN}
          onEmpty={() => setTypedN(null)}
        />
      </div>
      <div className="stiffness-run">
        {progress === null ? (
          <Button className="outlined" onPress={start} isDisabled={row.sum === null}>
            {found === null ? 'Reckon it' : 'Reckon it again'}
          </Button>
        ) : (
          <>
            <progress value={progress} aria-label="Reckoning" />
            <Button className="quiet" onPress={stop}>
              Stop
            </Button>
          </>
        )}
        {isOld && progress === null ? (
          <span className="caution">Settings changed since: this is how it was before.</span>
        ) : null}
      </div>
      {trouble === null ? null : (
        <p className="caution" role="alert">
          {trouble}
        </p>
      )}
      {found === null ? (
        <p className="hint">
          A solid model of the part as its layers fill it: walls, skins and infill. Some seconds, in
          the background.
        </p>
      ) : (
        <StiffnessAnswer found={found.part} />
      )}
      {reckonedHz === null ? null : (
        <KnockTest
          partName={row.part.name}
          material={row.material}
          reckonedHz={reckonedHz}
          tipG={found?.part.tipG ?? 0}
        />
      )}
      {found === null || row.sum === null ? null : <WaysToLie row={row} load={load} pick={pick} />}
      <p className="caution">
        Printed plastic scatters, creeps under steady load, softens in the sun and ages. These
        figures compare designs; they are no licence to fly over people. Load a printed piece by
        hand before flight, propellers off, and ask someone qualified where it matters.
      </p>
    </section>
  )
}
