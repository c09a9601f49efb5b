import { useState } from 'react'
import type { LedgerRow } from '../../state/store/derived.ts'
import { censusOf, findingsOf, readOf } from '../ledger/workFacts.ts'
import { InTurn } from '../inTurn/InTurn.tsx'
import { BedNote } from './BedNote.tsx'
import { Breakdown } from './Breakdown.tsx'
import { CountFields } from './CountFields.tsx'
import { FindingList } from './FindingList.tsx'
import { HairHint } from './HairHint.tsx'
import { InfillField } from './InfillField.tsx'
import { directionNote } from './directionNote.ts'
import { infillWorth } from './infillWorth.ts'
import { LayerFields } from './LayerFields.tsx'
import { MaterialField } from './MaterialField.tsx'
import { MeasuredFacts } from './MeasuredFacts.tsx'
import { NameField } from './NameField.tsx'
import { NoteField } from './NoteField.tsx'
import { PartView, type Ringed } from './PartView.tsx'
import { PlateHint } from './PlateHint.tsx'
import { PatternField } from './PatternField.tsx'
import { PoseField } from './PoseField.tsx'
import { PoseTrials } from './PoseTrials.tsx'
import { RoleField } from './RoleField.tsx'
import { SkinFields } from './SkinFields.tsx'
import { SpeckHint } from './SpeckHint.tsx'
import { SupportFields } from './SupportFields.tsx'
import { UnitField } from './UnitField.tsx'
import { UnitHint } from './UnitHint.tsx'
import { usePartEdit } from './usePartEdit.ts'
import { WallFields } from './WallFields.tsx'
import { ZoneFields } from './ZoneFields.tsx'

/** Everything about one part, opened below its row. */
export function PartPanel({ row }: { readonly row: LedgerRow }) {
  const { part, material, figures } = row
  const write = usePartEdit(part.id)
  const [ringed, setRinged] = useState<Ringed | null>(null)
  const read = readOf(row.work)
  const census = censusOf(row.work)
  const freshCensus = row.stale ? null : census
  // The box round a plate says nothing of how long its parts are.
  const direction =
    read === null || read.plate !== undefined
      ? null
      : directionNote(read.measure.boundsMm, part.pose)
  const worth =
    census === null || figures === null ? null : infillWorth(census, figures, part.recipe, material)
  return (
    <div className="part-panel" role="group" aria-label={`Settings of ${part.name}`}>
      <InTurn>
        <div className="part-infill">
          <InfillField infillPct={part.recipe.infillPct} write={write} worth={worth} />
          {figures === null ? null : <Breakdown figures={figures} />}
          <ZoneFields part={part} census={freshCensus} />
        </div>
        <section className="part-column" aria-label="Recipe">
          <h2>Recipe</h2>
          <RoleField partId={part.id} role={part.role} />
          <PatternField pattern={part.recipe.pattern} write={write} />
          <WallFields recipe={part.recipe} write={write} />
          <SkinFields recipe={part.recipe} write={write} />
          <LayerFields recipe={part.recipe} write={write} />
          <SupportFields recipe={part.recipe} write={write} />
          {part.role === 'arm' ? (
            <p className="caution">
              A dense arm is not a proven arm. Load-test one by hand before flight, away from
              spinning props, and follow your club’s and your country’s rules.
            </p>
          ) : null}
        </section>
        <section className="part-column" aria-label="Part">
          <h2>Part</h2>
          <NameField name={part.name} write={write} />
          <MaterialField material={material} write={write} />
          <CountFields part={part} write={write} />
          <UnitField unit={part.unit} measure={read?.measure ?? null} write={write} />
          {read?.unitHint === undefined ? null : <UnitHint part={part} hint={read.unitHint} />}
          <PoseField pose={part.pose} write={write} />
          <PoseTrials
            row={row}
            choose={(pose) => {
              write.edit({ pose })
            }}
          />
          {read === null ? null : <BedNote part={part} boundsMm={read.measure.boundsMm} />}
          {direction === null ? null : <p className="hint">{direction}</p>}
          <NoteField note={part.note} write={write} />
        </section>
        <section className="part-column part-facts" aria-label="Mesh">
          <h2>Mesh</h2>
          {read === null ? null : <PartView part={part} picture={read.thumbnail} ringed={ringed} />}
          {read === null ? (
            <p className="hint">Still reading {part.fileName}.</p>
          ) : (
            <>
              <FindingList
                findings={findingsOf(row.work)}
                onShow={(place) => {
                  setRinged({ place })
                }}
              />
              {read.plate === undefined ? null : <PlateHint partId={part.id} plate={read.plate} />}
              {read.measure.findings.some(({ code }) => code === 'stray-speck') ? (
                <SpeckHint partId={part.id} />
              ) : null}
              {read.measure.findings.some(({ code }) => code === 'hair') ? (
                <HairHint partId={part.id} isKept={part.keepsHairs === true} />
              ) : null}
              <MeasuredFacts read={read} census={census} figures={figures} />
            </>
          )}
          <p className="hint file-name">{part.fileName}</p>
        </section>
      </InTurn>
    </div>
  )
}
