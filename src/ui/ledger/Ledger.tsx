import { lazy, memo, Suspense, useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { ledgerRows } from '../../state/store/derived.ts'
import { useActions, useAppState } from '../appContext.ts'
import { useInTurn } from '../inTurn/useInTurn.ts'
import { sortRows, type Order } from './columns.ts'
import { LedgerFoot } from './LedgerFoot.tsx'
import { LedgerHead } from './LedgerHead.tsx'
import { LedgerRowView } from './LedgerRowView.tsx'

/** Fetched when rows are first ticked. */
const SelectionBar = lazy(async () => {
  const { SelectionBar: loaded } = await import('./SelectionBar.tsx')
  return { default: loaded }
})

/** Rows drawn in one task: a row takes some 5 ms the first time. */
const ROWS_AT_ONCE = 3

/** The parts of the frame, one line each, numbered as in the drawing. */
export const Ledger = memo(function Ledger() {
  const rows = useAppState(ledgerRows)
  const selection = useAppState((state) => state.selection)
  const openPartId = useAppState((state) => state.openPartId)
  const currency = useAppState((state) => state.frame.prices.currency)
  const printer = useAppState((state) => state.frame.printer)
  const { select, openPart } = useActions()
  const items = useMemo(() => new Map(rows.map(({ part }, i) => [part.id, i + 1])), [rows])
  const heaviest = Math.max(...rows.map(({ sum }) => sum?.massShare ?? 0)) || 1
  const [order, setOrder] = useState<Order>(null)
  const sorted = useMemo(() => sortRows(rows, order), [rows, order])
  const shown = useInTurn(
    sorted.map(({ part }) => part.id),
    ROWS_AT_ONCE,
  )
  // What was pressed went with the bar: the line that now stands where the first ticked one stood
  // takes the focus.
  const table = useRef<HTMLTableElement>(null)
  const leftAt = useRef<number | null>(null)
  useEffect(() => {
    if (leftAt.current === null || selection.length > 0) return
    const names = table.current?.querySelectorAll<HTMLElement>('.row-name') ?? []
    const next = names[Math.min(Math.max(leftAt.current, 0), names.length - 1)]
    leftAt.current = null
    next?.focus({ preventScroll: true })
  }, [selection, rows])
  const tickAll = useCallback(
    (all: boolean) => {
      select(all ? rows.map(({ part }) => part.id) : [])
    },
    [select, rows],
  )
  const ticked = selection.length === 0 ? 'none' : selection.length === rows.length ? 'all' : 'some'
  return (
    <>
      <table id="item-list" className="ledger" ref={table}>
        <caption className="unseen">
          Parts of the frame. Mass counts the pieces that fly; cost and time count spares too.
        </caption>
        <LedgerHead
          currency={currency}
          order={order}
          onOrder={setOrder}
          ticked={ticked}
          onTickAll={tickAll}
        />
        <tbody>
          {sorted.map((row) =>
            shown.has(row.part.id) ? (
              <LedgerRowView
                key={row.part.id}
                row={row}
                currency={currency}
                printer={printer}
                item={items.get(row.part.id) ?? 0}
                weight={(row.sum?.massShare ?? 0) / heaviest}
                isChosen={row.part.id === openPartId}
                isTicked={selection.includes(row.part.id)}
                onChoose={openPart}
              />
            ) : null,
          )}
        </tbody>
        <LedgerFoot />
      </table>
      {selection.length > 0 ? (
        <Suspense fallback={null}>
          <SelectionBar
            ids={selection}
            onLeave={() => {
              leftAt.current = sorted.findIndex(({ part }) => selection.includes(part.id))
            }}
          />
        </Suspense>
      ) : null}
    </>
  )
})
