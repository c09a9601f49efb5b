import { lazy, memo, Suspense, useCallback, useEffect, useState } from 'react'
import { piecesWords } from '../../core/frame/sayings.ts'
import { frameSum, ledgerRows } from '../../state/store/derived.ts'
import { useActions, useAppState, useReadState } from '../appContext.ts'
import { PlanBelow } from '../drawing/PlanBelow.tsx'
import { SignedAssembly } from '../drawing/SignedAssembly.tsx'
import { PlainButton } from '../fields/PlainButton.tsx'
import { showGhost } from '../head/ghost.ts'
import { Ledger } from '../ledger/Ledger.tsx'
import { StoryNote } from '../ledger/StoryNote.tsx'
import { findingsOf } from '../ledger/partWork.ts'
import { formatAddress } from './address.ts'
import { AssemblyOrder, OrderPaper } from './AssemblyOrder.tsx'
import { DrawnSheet } from './DrawnSheet.tsx'
import { TitleBlock } from './TitleBlock.tsx'
import { pointAt, watchPointed } from './pointedItem.ts'
import { goTo } from './useAddress.ts'

/** Not in the sheet's first load: most visits weigh what stands already. */
const AssemblingView = lazy(async () => ({
  default: (await import('../assembling/AssemblingView.tsx')).AssemblingView,
}))

/** The aircraft put together, and the list of its items. Number, line and piece are one thing. */
export function FrameSheet() {
  const { openPart } = useActions()
  const readState = useReadState()
  const name = useAppState((state) => state.frame.name)
  const hasParts = useAppState((state) => state.frame.parts.length > 0)
  const [isAssembling, setAssembling] = useState(false)

  useEffect(() => {
    const unwatch = watchPointed((partId) => {
      const state = readState()
      const item = state.frame.parts.findIndex(({ id }) => id === partId) + 1
      const { rows, printed } = frameSum(state)
      const row = rows.find(({ part }) => part.id === partId)
      showGhost(
        row === undefined || item === 0
          ? null
          : {
              massG: printed.massG.mid - row.flying.massG.mid,
              words: `without ${item}`,
            },
      )
    })
    return () => {
      unwatch()
      pointAt(null)
    }
  }, [readState])
  const choose = useCallback(
    (partId: string) => {
      const { openPartId, frame } = readState()
      if (openPartId !== partId) openPart(partId)
      else goTo('part', frame.parts.findIndex(({ id }) => id === partId) + 1)
    },
    [readState, openPart],
  )
  return (
    <>
      <DrawnSheet
        className="frame-sheet"
        title={isAssembling ? 'Frame, being put together' : 'Frame, assembled'}
        below={
          <>
            <FrameWords />{' '}
            {hasParts ? (
              <PlainButton
                className="quiet put-together"
                onPress={() => {
                  setAssembling(!isAssembling)
                }}
              >
                {isAssembling ? 'Done, show assembled' : 'Put it together'}
              </PlainButton>
            ) : null}
          </>
        }
        block={<TitleBlock sheet="frame" title={name} below="Frame" scale="by the bar" />}
      >
        {isAssembling ? (
          <Suspense fallback={<div className="frame-drawing sheet-coming" />}>
            <AssemblingView />
          </Suspense>
        ) : (
          <>
            <div className="frame-drawing">
              <SignedAssembly onLight={pointAt} onChoose={choose} />
              <StoryNote />
              <PlanBelow />
              <AssemblyOrder />
            </div>
            <div className="frame-list">
              <Ledger />
            </div>
          </>
        )}
      </DrawnSheet>
      {isAssembling ? null : <OrderPaper />}
    </>
  )
}

/** How many parts and pieces, and which of them have something to look at. */
const FrameWords = memo(function FrameWords() {
  const rows = useAppState(ledgerRows)
  const { flying, spares } = useAppState(frameSum).pieces
  const odd = rows.flatMap(({ work }, i) =>
    work.kind === 'failed' || findingsOf(work).some(({ grade }) => grade !== 'note') ? [i + 1] : [],
  )
  return (
    <>
      {rows.length} {rows.length === 1 ? 'part' : 'parts'}, {piecesWords(flying, spares)}.
      {odd.length === 0 ? null : (
        <>
          {' '}
          {odd.length} to look at:{' '}
          {odd.map((item, i) => (
            <span key={item}>
              {i === 0 ? '' : ', '}
              <a className="amber" href={formatAddress('part', item)}>
                {item}
              </a>
            </span>
          ))}
        </>
      )}
    </>
  )
})
