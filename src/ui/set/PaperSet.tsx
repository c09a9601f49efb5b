import { useCallback, useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { ledgerRows } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { StillDrawing } from '../inTurn/stillDrawing.ts'
import { PartPaper } from '../part/PartPaper.tsx'
import { AircraftSheet } from './AircraftSheet.tsx'
import { formatAddress } from './address.ts'
import { BenchSheet } from './BenchSheet.tsx'
import { CarbonSheet } from './CarbonSheet.tsx'
import { DrawnSheet } from './DrawnSheet.tsx'
import { FrameSheet } from './FrameSheet.tsx'
import { PaperNotes } from './PaperNotes.tsx'
import { PartWords } from './PartSheet.tsx'
import { TitleBlock } from './TitleBlock.tsx'

/** Sheets join one after the other: a long page must not keep input waiting. */
const STEP_MS = 60

/**
 * The whole set as it goes on paper: the frame, a page for every item, carbon, aircraft, bench, and
 * what it rests on.
 */
export function PaperSet() {
  const rows = useAppState(ledgerRows)
  const hasCarbon = useAppState(({ frame }) => frame.carbon !== null)
  const [shown, setShown] = useState(1)
  // A sheet that joins must not draw those before it anew.
  const pages = useMemo(
    () => [
      <FrameSheet key="frame" />,
      ...rows.map((row, i) => (
        <DrawnSheet
          key={row.part.id}
          className="part-sheet"
          title={
            <>
              <span className="part-number">{i + 1}</span> {row.part.name}
            </>
          }
          block={<TitleBlock sheet="part" title={row.part.name} below={<PartWords row={row} />} />}
        >
          <PartPaper row={row} />
        </DrawnSheet>
      )),
      ...(hasCarbon ? [<CarbonSheet key="carbon" />] : []),
      <AircraftSheet key="aircraft" />,
      <BenchSheet key="bench" />,
      <PaperNotes key="notes" />,
    ],
    [rows, hasCarbon],
  )
  const hasJoined = shown >= pages.length
  // Sheets draw themselves piece by piece after they have joined.
  const [drawing, setDrawing] = useState(0)
  const begin = useCallback(() => {
    setDrawing((count) => count + 1)
    return () => {
      setDrawing((count) => count - 1)
    }
  }, [])
  const isWhole = hasJoined && drawing === 0
  useEffect(() => {
    if (hasJoined) return
    const timer = setTimeout(() => {
      setShown(shown + 1)
    }, STEP_MS)
    return () => {
      clearTimeout(timer)
    }
  }, [shown, hasJoined])
  return (
    <div className="paper-set">
      <div className="paper-bar">
        <p role="status">
          {isWhole
            ? `The whole set: ${pages.length} sheets, each on a page of its own or more.`
            : `Drawing sheet ${shown} of ${pages.length}…`}
        </p>
        <Button
          className="firm"
          isDisabled={!isWhole}
          onPress={() => {
            window.print()
          }}
        >
          Print the whole set
        </Button>
        <a href={formatAddress('frame')}>Back to the sheets</a>
      </div>
      <StillDrawing value={begin}>{pages.slice(0, shown)}</StillDrawing>
    </div>
  )
}
