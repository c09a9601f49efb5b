import { lazy, Suspense, useCallback, useState } from 'react'
import { useActions, useAppState } from './appContext.ts'
import { EmptyState } from './EmptyState.tsx'
import { FailureList } from './FailureList.tsx'
import { TotalsHead } from './frame/TotalsHead.tsx'
import { IncomingLine } from './IncomingLine.tsx'
import type { Intake } from './intake/readDrop.ts'
import { WindowDrop } from './intake/WindowDrop.tsx'
import { InTurn } from './inTurn/InTurn.tsx'
import { isSavedFrame } from './intake/savedFrame.ts'
import { Ledger } from './ledger/Ledger.tsx'
import { NoticeLine } from './NoticeLine.tsx'
import { StoryNote } from './ledger/StoryNote.tsx'
import { TopBar } from './TopBar.tsx'
import { ElsewhereLine } from './tabs/ElsewhereLine.tsx'

/** Fetched once there is a frame: a first visit need not wait for them. */
const AircraftSections = lazy(async () => {
  const { AircraftSections: loaded } = await import('./aircraft/AircraftSections.tsx')
  return { default: loaded }
})

const CarbonBlock = lazy(async () => {
  const { CarbonBlock: loaded } = await import('./frame/CarbonBlock.tsx')
  return { default: loaded }
})

const TermsLine = lazy(async () => {
  const { TermsLine: loaded } = await import('./frame/TermsLine.tsx')
  return { default: loaded }
})

/** Id of the frame the store starts with: until the last visit's is back, the page must not look like a first visit. */
const UNRESTORED = 'first'

/** The whole page: the frame's total on top, its parts below. */
export function App() {
  const { addFiles, openProject } = useActions()
  const hasParts = useAppState((state) => state.frame.parts.length > 0)
  const isRestoring = useAppState((state) => state.frame.id === UNRESTORED)
  const [leftAlone, setLeftAlone] = useState(0)

  const onIntake = useCallback(
    (intake: Intake) => {
      setLeftAlone(intake.leftAlone)
      const [first] = intake.files
      if (first === undefined) return
      if (intake.files.length > 1 || !isSavedFrame(first)) void addFiles(intake.files)
      else void openProject(first)
    },
    [addFiles, openProject],
  )

  return (
    <>
      <TopBar onIntake={onIntake} hasParts={hasParts} />
      {hasParts ? <TotalsHead /> : null}
      <main>
        <ElsewhereLine />
        <FailureList />
        <IncomingLine leftAlone={leftAlone} />
        {hasParts ? (
          <InTurn>
            <StoryNote />
            <Ledger />
            <Suspense fallback={null}>
              <TermsLine />
            </Suspense>
            <Suspense fallback={null}>
              <CarbonBlock />
            </Suspense>
            <Suspense fallback={null}>
              <AircraftSections />
            </Suspense>
          </InTurn>
        ) : isRestoring ? null : (
          <EmptyState onIntake={onIntake} />
        )}
      </main>
      <NoticeLine />
      <WindowDrop onIntake={onIntake} />
    </>
  )
}
