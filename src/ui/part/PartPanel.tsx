import { memo, useMemo, useState, type ReactNode } from 'react'
import type { Part } from '../../core/model/frame.ts'
import type { Material } from '../../core/model/figures.ts'
import type { Bounds, Finding, MeshMeasure } from '../../core/model/mesh.ts'
import type { Pose, Recipe } from '../../core/model/settings.ts'
import { crowdWords } from '../../core/mesh/plateWords.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { InTurn } from '../inTurn/InTurn.tsx'
import { censusOf, findingsOf, isCounting, readOf } from '../ledger/partWork.ts'
import { BedNote } from './BedNote.tsx'
import { Breakdown } from './Breakdown.tsx'
import { CoarseHint } from './CoarseHint.tsx'
import { CountingLine } from './CountingLine.tsx'
import { CountFields } from './CountFields.tsx'
import { directionNote } from './directionNote.ts'
import { FindingList } from './FindingList.tsx'
import { HairHint } from './HairHint.tsx'
import { InfillField, type InfillFieldProps } from './InfillField.tsx'
import { infillWorth } from './infillWorth.ts'
import { FirstLayerField, LayerField, LineField } from './LayerFields.tsx'
import { MaterialField } from './MaterialField.tsx'
import { MeasuredList } from './MeasuredList.tsx'
import { NameField } from './NameField.tsx'
import { NoteField } from './NoteField.tsx'
import { PartPicture } from './PartPicture.tsx'
import { PatternField } from './PatternField.tsx'
import { PlateHint } from './PlateHint.tsx'
import { PoseField } from './PoseField.tsx'
import { PoseTrials } from './PoseTrials.tsx'
import { RoleField } from './RoleField.tsx'
import { SectionBlock } from './SectionBlock.tsx'
import { SkinFields } from './SkinFields.tsx'
import { SpeckHint } from './SpeckHint.tsx'
import { StepLines } from './StepLines.tsx'
import type { StepKey } from './steps.ts'
import { BeamLine } from './stiffness/BeamLine.tsx'
import { StiffnessPlace } from './stiffness/StiffnessPlace.tsx'
import { useLiveBeam } from './stiffness/useLiveBeam.ts'
import { SupportFields } from './SupportFields.tsx'
import { UnitField } from './UnitField.tsx'
import { UnitHint } from './UnitHint.tsx'
import { useLaid } from './useLaid.ts'
import { useLate } from '../useLate.ts'
import { usePartEdit, type PartEdit } from './usePartEdit.ts'
import { Unfolding } from './Unfolding.tsx'
import { useSteps } from './useSteps.ts'
import { WhatIfPlace } from './WhatIfPlace.tsx'
import { WallField, WallThicknessField } from './WallFields.tsx'
import { ZoneFields } from './ZoneFields.tsx'

/**
 * Everything about one part: itself large, what was found, the settings that matter with what a
 * step would do, the rest.
 */
export function PartPanel({ row }: { readonly row: LedgerRow }) {
  const { part, figures } = row
  const write = usePartEdit(part.id)
  const [ringed, setRinged] = useState<Ringed | null>(null)
  const read = readOf(row.work)
  const census = censusOf(row.work)
  const freshCensus = row.stale ? null : census
  const laid = useLaid(part.recipe)
  // The field under a hand goes first; what only tells of it comes a moment after.
  const late = useLate(row)
  const lateRead = readOf(late.work)
  return (
    <div
      className={isCounting(row.work) ? 'part-panel part-counting' : 'part-panel'}
      role="group"
      aria-label={`Settings of ${part.name}`}
    >
      <InTurn>
        <div className="part-large">
          {lateRead === null ? (
            <p className="hint">{unreadWords(late)}</p>
          ) : (
            <LatePicture row={late} read={lateRead} ringed={ringed} />
          )}
        </div>
        <PartNotes row={late} onRing={setRinged} />
        <Strip row={late} laid={laid} material={row.material} />
        {lateRead === null ? null : <LateWhatIf row={late} />}
        {lateRead === null ? null : <LateStiffness row={late} />}
        <section className="part-cells" aria-label="Part">
          <NameField name={part.name} write={write} />
          <RoleField partId={part.id} />
          <CountFields
            quantity={part.quantity}
            mirrored={part.mirrored}
            spares={part.spares}
            write={write}
          />
          <PlacedFields
            unit={part.unit}
            measure={read?.measure ?? null}
            pose={part.pose}
            recipe={laid}
            write={write}
          />
        </section>
        <Unfolding opens="All settings" closes="Fewer settings">
          {() => (
            <div className="part-rest-body">
              <section className="part-cells" aria-label="Recipe">
                <WallThicknessField recipe={part.recipe} write={write} />
                <FirstLayerField recipe={part.recipe} write={write} />
                <ZoneFields part={part} census={freshCensus} />
                <PoseTrials
                  row={row}
                  choose={(pose) => {
                    write.edit({ pose })
                  }}
                />
                <NoteField note={part.note} write={write} />
              </section>
              {read === null ? null : (
                <section className="part-mesh" aria-label="Mesh">
                  <MeasuredList read={read} census={census} figures={figures} />
                  <p className="hint file-name">{part.fileName}</p>
                </section>
              )}
            </div>
          )}
        </Unfolding>
      </InTurn>
    </div>
  )
}

/** A finding whose place is ringed in the picture. */
interface Ringed {
  readonly place: Bounds
  readonly finding: Finding
}

interface PartNotesProps {
  readonly row: LedgerRow
  readonly onRing: (ringed: Ringed) => void
}

/** What was found on the mesh, cut open, and where the grams go. */
const PartNotes = memo(function PartNotes({ row, onRing }: PartNotesProps) {
  const { part, figures } = row
  const read = readOf(row.work)
  const crowd = read === null || read.plate !== undefined ? null : crowdWords(read.measure.bodies)
  // The box round a plate says nothing of how long its parts are.
  const direction =
    read === null || read.plate !== undefined
      ? null
      : directionNote(read.measure.boundsMm, part.pose)
  return (
    <section className="part-notes" aria-label="What was found">
      <CountingLine work={row.work} />
      {read === null ? null : <SectionBlock row={row} boundsMm={read.measure.boundsMm} />}
      {figures === null ? null : <Breakdown figures={figures} sum={row.sum} />}
      {read === null ? null : (
        <>
          <FindingList
            findings={findingsOf(row.work)}
            onShow={(place, finding) => {
              onRing({ place, finding })
            }}
          />
          {row.basis === 'coarse' ? <CoarseHint partId={part.id} /> : null}
          {read.unitHint === undefined ? null : <UnitHint part={part} hint={read.unitHint} />}
          {read.plate === undefined ? null : <PlateHint partId={part.id} plate={read.plate} />}
          {crowd === null ? null : <p className="hint">{crowd}</p>}
          {read.measure.findings.some(({ code }) => code === 'stray-speck') ? (
            <SpeckHint partId={part.id} />
          ) : null}
          {read.measure.findings.some(({ code }) => code === 'hair') ? (
            <HairHint partId={part.id} isKept={part.keepsHairs === true} />
          ) : null}
          <BedNote part={part} boundsMm={read.measure.boundsMm} />
          {direction === null ? null : <p className="hint">{direction}</p>}
        </>
      )}
      {part.role === 'arm' ? (
        <p className="caution">
          A dense arm is not a proven arm. Load-test one by hand before flight, away from spinning
          props, and follow your club’s and your country’s rules.
        </p>
      ) : null}
    </section>
  )
})

const LatePicture = memo(PartPicture)
const LateWhatIf = memo(WhatIfPlace)
const LateStiffness = memo(StiffnessPlace)

interface PlacedFieldsProps {
  readonly unit: Part['unit']
  readonly measure: MeshMeasure | null
  readonly pose: Pose
  readonly recipe: Recipe
  readonly write: PartEdit
}

/** How the part lies and is held; not drawn again while that stands. */
const PlacedFields = memo(function PlacedFields(props: PlacedFieldsProps) {
  const { unit, measure, pose, recipe, write } = props
  return (
    <>
      <UnitField unit={unit} measure={measure} write={write} />
      <PoseField pose={pose} write={write} />
      <SupportFields recipe={recipe} write={write} />
    </>
  )
})

interface StripProps {
  /** A moment late. */
  readonly row: LedgerRow
  /** As they are now: what a field shows may not be old. */
  readonly laid: Recipe
  readonly material: Material
}

/** The settings that matter first, each with what one step of it would do to the frame. */
const Strip = memo(function Strip({ row, laid, material }: StripProps) {
  const { part, figures, work } = row
  const write = usePartEdit(part.id)
  const effects = useSteps(row)
  const { own, load, now, givesOf, isScaled } = useLiveBeam(row, effects)
  const census = censusOf(work)
  const worth =
    census === null || figures === null
      ? null
      : infillWorth(census, figures, part.recipe, row.material)
  // Elements that stay the same are not drawn again, nor are the steps while they are not reckoned
  // anew.
  const fields = useMemo(
    () => ({
      walls: <WallField recipe={laid} write={write} />,
      skins: <SkinFields recipe={laid} write={write} />,
      layer: <LayerField recipe={laid} write={write} />,
      line: <LineField recipe={laid} write={write} />,
      pattern: <PatternField pattern={laid.pattern} write={write} />,
      plastic: <MaterialField material={material} write={write} />,
    }),
    [laid, material, write],
  )
  const steps = useMemo(() => {
    const lines = (key: StepKey) => (
      <StepLines
        of={key}
        effects={effects.filter(({ step }) => step.key === key)}
        write={write}
        givesOf={givesOf}
      />
    )
    return {
      walls: lines('walls'),
      infill: lines('infill'),
      skins: lines('skins'),
      layer: lines('layer'),
      line: lines('line'),
      pattern: lines('pattern'),
      plastic: lines('plastic'),
    }
  }, [effects, write, givesOf])
  const card = (key: StepKey, field: ReactNode) => (
    <div className="strip-card">
      {field}
      {steps[key]}
    </div>
  )
  const infill = <LiveInfill partId={part.id} write={write} worth={worth} />
  return (
    <section className="part-strip" aria-label="Settings that matter">
      <InTurn>
        {card('walls', fields.walls)}
        {card('infill', infill)}
        {card('skins', fields.skins)}
        {card('layer', fields.layer)}
        {card('line', fields.line)}
        {card('pattern', fields.pattern)}
        {card('plastic', fields.plastic)}
      </InTurn>
      {/* Comes late: above the cards it would push them from under a hand. */}
      <BeamLine own={own} gives={now} load={load} isScaled={isScaled} />
    </section>
  )
})

interface LiveInfillProps extends Pick<InfillFieldProps, 'write' | 'worth'> {
  readonly partId: string
}

/** All of the strip that is drawn within a press of its slider. */
function LiveInfill({ partId, write, worth }: LiveInfillProps) {
  const infillPct = useAppState(
    ({ frame }) => frame.parts.find(({ id }) => id === partId)?.recipe.infillPct ?? 0,
  )
  return <InfillField infillPct={infillPct} write={write} worth={worth} />
}

/** Of a part whose mesh is not there: not yet, or not at all. */
function unreadWords({ part, work }: LedgerRow): string {
  if (work.kind !== 'failed') return `Still reading ${part.fileName}.`
  const { message, advice } = work.problem
  return `${message} ${advice}`
}
