import { memo, useEffect, useMemo } from 'react'
import { formatMoney } from '../../core/words/format.ts'
import { ledgerRows, type LedgerRow } from '../../state/store/derived.ts'
import { useActions, useAppState } from '../appContext.ts'
import { useLate } from '../useLate.ts'
import { InTurn } from '../inTurn/InTurn.tsx'
import { isCounting } from '../ledger/partWork.ts'
import { PartPanel } from '../part/PartPanel.tsx'
import { PartPaper } from '../part/PartPaper.tsx'
import { showGrams, showTime } from '../show.ts'
import { formatAddress } from './address.ts'
import { DrawnSheet } from './DrawnSheet.tsx'
import { chosenItem } from './chosenItem.ts'
import { TitleBlock } from './TitleBlock.tsx'
import { useAddress } from './useAddress.ts'
import { massUnit } from '../../core/words/shownUnits.ts'

/** One part: large, with everything that can be set and what that does. */
export function PartSheet() {
  const { item: named } = useAddress()
  const rows = useAppState(ledgerRows)
  const chosen = useAppState(chosenItem)
  const { openPart } = useActions()
  const item = named ?? chosen
  const row = rows[item - 1]
  const partId = row?.part.id
  const lateRows = useLate(rows)
  const late = lateRows[item - 1]
  // Both only tell of the part: not drawn within a press of its slider.
  const below = useMemo(() => <Neighbours item={item} rows={lateRows} />, [item, lateRows])
  const block = useMemo(
    () =>
      late === undefined ? null : (
        <TitleBlock sheet="part" title={late.part.name} below={<PartWords row={late} />} />
      ),
    [late],
  )
  useEffect(() => {
    if (partId !== undefined) openPart(partId)
  }, [partId, openPart])
  if (row === undefined)
    return (
      <DrawnSheet title={`No item ${item}`} block={<TitleBlock sheet="part" />}>
        <p className="sheet-empty">
          The list ends at {rows.length}. <a href={formatAddress('frame')}>Back to the list</a>
        </p>
      </DrawnSheet>
    )
  return (
    <DrawnSheet
      key={row.part.id}
      className="part-sheet"
      title={
        <>
          <span className="part-number">{item}</span> {row.part.name}
        </>
      }
      below={below}
      block={block}
    >
      <PartPanel row={row} />
      {late === undefined ? null : <Paper row={late} />}
    </DrawnSheet>
  )
}

/**
 * For the printer, and so never before what is seen: neither while it opens nor while a slider is
 * dragged.
 */
const Paper = memo(function Paper({ row }: { readonly row: LedgerRow }) {
  return (
    <InTurn>
      <PartPaper row={row} />
    </InTurn>
  )
})

function Neighbours({
  item,
  rows,
}: {
  readonly item: number
  readonly rows: readonly LedgerRow[]
}) {
  const before = rows[item - 2]
  const after = rows[item]
  return (
    <nav className="neighbours" aria-label="Other parts">
      {before === undefined ? null : (
        <a href={formatAddress('part', item - 1)}>
          ‹ {item - 1} {before.part.name}
        </a>
      )}
      {after === undefined ? null : (
        <a href={formatAddress('part', item + 1)}>
          {item + 1} {after.part.name} ›
        </a>
      )}
    </nav>
  )
}

export function PartWords({ row }: { readonly row: LedgerRow }) {
  const currency = useAppState((state) => state.frame.prices.currency)
  const { part, material, sum, work } = row
  if (sum === null) return <>{part.fileName}</>
  const isCounted = sum.figures !== null
  const { flying, withSpares } = sum
  const mass = showGrams(flying.massG)
  return (
    <>
      {part.fileName} · {material.name} · {mass.mid} {massUnit()}
      {mass.range === '' ? null : (
        <>
          {' '}
          <span className="block-range">({mass.range})</span>
        </>
      )}
      {isCounted
        ? ` · ${formatMoney(withSpares.cost.mid, currency)} · ${showTime(withSpares.timeS).mid} h`
        : ' by the scale'}
      {isCounting(work) ? ' · being counted' : ''}
    </>
  )
}
