import '../styles/aircraft.css'
import '../styles/choose.css'
import { useActions, useAppState } from '../appContext.ts'
import { Section } from '../aircraft/Section.tsx'
import { FindSection } from '../choose/find/FindSection.tsx'
import { SavesMost } from '../choose/steps/SavesMost.tsx'
import { VariantsSection } from '../choose/variants/VariantsSection.tsx'
import { WhatIf } from '../choose/whatIf/WhatIf.tsx'
import { InfillTable } from '../choose/InfillTable.tsx'
import { Choice } from '../fields/Choice.tsx'
import { InTurn } from '../inTurn/InTurn.tsx'
import { LiesPlace } from '../part/stiffness/LiesPlace.tsx'
import { PoseTrials } from '../part/PoseTrials.tsx'
import { usePartEdit } from '../part/usePartEdit.ts'
import { ledgerRows, type LedgerRow } from '../../state/store/derived.ts'
import { chosenItem } from './chosenItem.ts'
import { DrawnSheet } from './DrawnSheet.tsx'
import { TitleBlock } from './TitleBlock.tsx'

/** What a part could be instead: other infill, another way to lie, each with what it would do. */
export function ChooseSheet() {
  const item = useAppState(chosenItem)
  const rows = useAppState(ledgerRows)
  const row = rows[item - 1]
  const frameId = useAppState((state) => state.frame.id)
  const { openPart } = useActions()
  return (
    <DrawnSheet
      className="choose-sheet"
      title="Choose"
      below="Nothing here changes the frame until you take it."
      block={<TitleBlock sheet="choose" />}
    >
      <div className="aircraft">
        <InTurn>
          <VariantsSection />
          <SavesMost />
          <FindSection key={frameId} />
        </InTurn>
        <div className="choose-part">
          <Choice
            label="Part"
            value={row?.part.id ?? null}
            options={rows.map(({ part }, i) => ({ id: part.id, name: `${i + 1} ${part.name}` }))}
            onChange={openPart}
          />
        </div>
        {row === undefined ? null : <Ways key={row.part.id} row={row} />}
      </div>
    </DrawnSheet>
  )
}

function Ways({ row }: { readonly row: LedgerRow }) {
  const write = usePartEdit(row.part.id)
  return (
    <InTurn>
      <WhatIf row={row} />
      <Section title="Infill" summary={`${row.part.name}, from hollow to solid`}>
        <div className="craft-full">
          <InfillTable row={row} />
        </div>
      </Section>
      <Section
        title="Ways to lie"
        summary="each face it can stand on, counted; how stiff and strong it is each way"
      >
        <div className="craft-full">
          <PoseTrials
            row={row}
            choose={(pose) => {
              write.edit({ pose })
            }}
          />
          <LiesPlace row={row} />
        </div>
      </Section>
    </InTurn>
  )
}
