import '../styles/drill.css'
import { Fragment, useState } from 'react'
import { DRILL_CAUTION, FIBRE_CAUTION } from '../../core/data/drills.ts'
import type { DrillRow } from '../../core/drill/types.ts'
import { toldWords } from '../../core/words/toldWords.ts'
import { Section } from '../aircraft/Section.tsx'
import { useAppState } from '../appContext.ts'
import { InTurn } from '../inTurn/InTurn.tsx'
import { onOneLine, showLength, showMm, showNumber } from '../show.ts'
import { CouponBlock } from './CouponBlock.tsx'
import { groupRows, type DrillGroup } from './drillGroups.ts'
import { FitList } from './FitList.tsx'
import { HoleDrawing } from './HoleDrawing.tsx'
import { HoleUseChoice } from './HoleUseChoice.tsx'
import { useDrillList } from './useDrillList.ts'

/** Which drill to fetch for what, and what to look at before anything is ordered. */
export function DrillSection() {
  const list = useDrillList()
  const parts = useAppState((state) => state.frame.parts)
  const [shown, setShown] = useState<string | null>(null)
  if (parts.length === 0) return null
  const groups = list === null ? [] : groupRows(list.rows)
  const drills = new Set(groups.flatMap(({ first }) => first.drillMm ?? []))
  const drilled = list?.rows.filter(({ drillMm }) => drillMm !== null).length ?? 0
  const partId =
    shown !== null && parts.some(({ id }) => id === shown)
      ? shown
      : (groups[0]?.first.partId ?? null)
  const summary =
    list === null
      ? 'holes are being found'
      : list.rows.length === 0
        ? 'no holes found'
        : `${drilled} of ${list.rows.length} holes to drill, ${drills.size} drills; of one piece each`
  return (
    <>
      <Section title="Drill list" summary={summary} onPaper={drilled > 0}>
        <div className="craft-full drill">
          {partId === null || list === null ? null : (
            <HoleDrawing
              partId={partId}
              parts={parts.filter(({ id }) => list.rows.some((row) => row.partId === id))}
              onShow={setShown}
            />
          )}
          {groups.length === 0 ? null : (
            <DrillTable
              groups={groups.filter(({ first }) => first.drillMm !== null)}
              onShow={setShown}
            />
          )}
          {groups.some(({ first }) => first.drillMm === null) ? (
            <details className="screen-only">
              <summary>Holes that need no drill, or were told to be for nothing</summary>
              <DrillTable
                groups={groups.filter(({ first }) => first.drillMm === null)}
                onShow={setShown}
              />
            </details>
          ) : null}
          {list === null ? null : <CouponBlock rows={list.rows} />}
          <DrillCautions />
        </div>
      </Section>
      {list === null || list.checks.length === 0 ? null : <FitList checks={list.checks} />}
    </>
  )
}

interface DrillTableProps {
  readonly groups: readonly DrillGroup[]
  readonly onShow: (partId: string) => void
}

function DrillTable({ groups, onShow }: DrillTableProps) {
  return (
    <div className="drill-scroll">
      <table className="drill-table">
        <thead>
          <tr>
            <th scope="col">Drill</th>
            <th scope="col">Part</th>
            <th scope="col">No.</th>
            <th scope="col" className="number">
              Holes
            </th>
            <th scope="col" className="number">
              Drawn
            </th>
            <th scope="col" className="number">
              Comes out
            </th>
            <th scope="col" className="number">
              Deep
            </th>
            <th scope="col">For</th>
          </tr>
        </thead>
        <tbody>
          {/* Each has a field of its own, and all of them at once keep input waiting. */}
          <InTurn>
            {groups.map((group, i) => (
              <GroupRow
                key={`${group.first.partId} ${group.sign}`}
                group={group}
                isFirst={group.first.drillMm !== groups[i - 1]?.first.drillMm}
                onShow={onShow}
              />
            ))}
          </InTurn>
        </tbody>
      </table>
    </div>
  )
}

interface GroupRowProps {
  readonly group: DrillGroup
  /** Of its drill. */
  readonly isFirst: boolean
  readonly onShow: (partId: string) => void
}

function GroupRow({ group, isFirst, onShow }: GroupRowProps) {
  const item = useAppState((state) =>
    state.frame.parts.findIndex(({ id }) => id === group.first.partId),
  )
  const { first, rows, sign } = group
  const { drillMm, part, hole, diameterMm, comesOutMm, depthMm } = first
  const size =
    hole.shape === 'slot'
      ? `${showMm(diameterMm, 2)} × ${showMm(diameterMm + hole.stretchMm, 1)}`
      : showMm(diameterMm, 2)
  const least = rows.reduce((one, row) => (row.leftLines < one.leftLines ? row : one), first)
  const minded = notesOf([least, ...rows])
  const notes = [...first.told.slice(1), ...minded]
  return (
    <tr className={isFirst ? 'drill-first' : undefined}>
      <th scope="row" className="drill-size">
        {drillMm === null ? (isFirst ? 'none' : '') : isFirst ? showLength(drillMm, 2) : ''}
      </th>
      <td>
        <button
          type="button"
          className="drill-part"
          onClick={() => {
            onShow(first.partId)
          }}
        >
          <b>{item + 1}</b> {part}
        </button>
      </td>
      <td>
        {sign.split(/(?<=,) /).map((numbers) => (
          <Fragment key={numbers}>
            <span className="drill-numbers">{numbers}</span>{' '}
          </Fragment>
        ))}
      </td>
      <td className="number">{rows.length}</td>
      <td className="number">{size}</td>
      <td className="number">
        {showNumber(comesOutMm.mid, 2) === '–' ? '–' : showMm(comesOutMm.mid, 2)}
        <small>
          {showMm(comesOutMm.low, 2)}–{showMm(comesOutMm.high, 2)}
        </small>
      </td>
      <td className="number">{showMm(depthMm, 1)}</td>
      <td className="drill-for">
        <HoleUseChoice group={group} />
        <p
          className={least.stands && minded.length === 0 ? 'quiet-text' : 'quiet-text drill-minded'}
        >
          {notes.map((note) => onOneLine(toldWords(note))).join(' ')}
        </p>
      </td>
    </tr>
  )
}

/**
 * What is to be minded of alike holes: of notes that differ in figures alone the first, of the
 * thinnest wall.
 */
function notesOf(rows: readonly DrillRow[]): readonly string[] {
  const told = new Map<string, string>()
  for (const note of rows.flatMap((row) => row.notes)) {
    const kind = note.replaceAll(/[\d.]+/g, '#')
    if (!told.has(kind)) told.set(kind, note)
  }
  return [...told.values()]
}

/** Where the drill is taken up: what to mind of prints and of fibre. */
function DrillCautions() {
  return (
    <p className="hint">
      {DRILL_CAUTION} {FIBRE_CAUTION}
    </p>
  )
}
