import { Fragment, lazy, Suspense, useCallback, useEffect, useRef, useState } from 'react'
import { useActions, useAppState } from './appContext.ts'
import { EmptyState } from './EmptyState.tsx'
import { FailureList } from './FailureList.tsx'
import { TopBar } from './head/TopBar.tsx'
import { IncomingLine } from './IncomingLine.tsx'
import type { Intake } from './intake/readDrop.ts'
import { isSavedFrame } from './intake/savedFrame.ts'
import { WindowDrop } from './intake/WindowDrop.tsx'
import { NoticeLine } from './NoticeLine.tsx'
import { parseAddress } from './set/address.ts'
import { goTo } from './set/useAddress.ts'
import { useShownUnits } from './useShownUnits.ts'
import { ElsewhereLine } from './tabs/ElsewhereLine.tsx'

const frameSet = () => import('./set/frameSet.ts')
const TotalsHead = lazy(async () => ({ default: (await frameSet()).TotalsHead }))
const SheetPlace = lazy(async () => ({ default: (await frameSet()).SheetPlace }))

const CrossingWatch = lazy(async () => {
  const { CrossingWatch: loaded } = await import('./aircraft/CrossingWatch.tsx')
  return { default: loaded }
})

/**
 * Id of the frame the store starts with: until the last visit's is back, the page must not look
 * like a first visit.
 */
const UNRESTORED = 'first'

/** The whole page: the frame's mass on its ruler on top, one sheet of the set below. */
export function App() {
  const { addFiles, openProject } = useActions()
  const hasParts = useAppState((state) => state.frame.parts.length > 0)
  const frameId = useAppState((state) => state.frame.id)
  const unitKey = useShownUnits()
  const isRestoring = frameId === UNRESTORED
  const [leftAlone, setLeftAlone] = useState(0)

  // Here before the first mesh is read, and not in the way of the first screen.
  useEffect(() => {
    void frameSet()
  }, [])

  // Another frame begins on its first sheet; the address of a reload stays. Between two frames the
  // page may be without parts, and so without a sheet that could see the change.
  const lastFrame = useRef(frameId)
  useEffect(() => {
    const hasChanged = lastFrame.current !== UNRESTORED && lastFrame.current !== frameId
    lastFrame.current = frameId
    if (hasChanged && parseAddress(location.hash).sheet !== 'frame') goTo('frame')
  }, [frameId])

  // With the last part goes its sheet, and the focus with it.
  const hadParts = useRef(false)
  useEffect(() => {
    if (hadParts.current && !hasParts && document.activeElement === document.body)
      document.querySelector<HTMLElement>('main h1')?.focus({ preventScroll: true })
    hadParts.current = hasParts
  }, [hasParts])

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
      <Fragment key={unitKey}>
        <Suspense fallback={null}>{hasParts ? <TotalsHead /> : null}</Suspense>
        <main>
          <ElsewhereLine />
          <FailureList />
          <IncomingLine leftAlone={leftAlone} />
          {hasParts ? (
            <>
              <Suspense fallback={<div className="drawn-sheet sheet-coming" />}>
                <SheetPlace />
              </Suspense>
              <Suspense fallback={null}>
                <CrossingWatch />
              </Suspense>
            </>
          ) : isRestoring ? null : (
            <EmptyState onIntake={onIntake} />
          )}
        </main>
      </Fragment>
      <NoticeLine />
      <WindowDrop onIntake={onIntake} />
    </>
  )
}
