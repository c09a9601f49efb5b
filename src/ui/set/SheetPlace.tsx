import { lazy, Suspense, useEffect, useLayoutEffect, type ComponentType } from 'react'
import { useAppState } from '../appContext.ts'
import { showGhost } from '../head/ghost.ts'
import { SHEETS, type PlaceId } from './address.ts'
import { useAddress } from './useAddress.ts'
import { useShownPlace } from './useShownPlace.ts'

const frameSheet = () => import('./FrameSheet.tsx')
// A frame begins on its first sheet: that one is here when the first mesh is read.
void frameSheet().catch(() => {
  // Told where the sheet is gone to.
})

/** Each other sheet is fetched when it is first gone to. */
const PLACES: Readonly<Record<PlaceId, ComponentType>> = {
  frame: lazy(async () => ({ default: (await frameSheet()).FrameSheet })),
  part: lazy(async () => ({ default: (await import('./PartSheet.tsx')).PartSheet })),
  choose: lazy(async () => ({ default: (await import('./ChooseSheet.tsx')).ChooseSheet })),
  carbon: lazy(async () => ({ default: (await import('./CarbonSheet.tsx')).CarbonSheet })),
  aircraft: lazy(async () => ({ default: (await import('./AircraftSheet.tsx')).AircraftSheet })),
  paper: lazy(async () => ({ default: (await import('./PaperSet.tsx')).PaperSet })),
  bench: lazy(async () => ({ default: (await import('./BenchSheet.tsx')).BenchSheet })),
}

/** The sheet that the address names. Each is left and found again where it was scrolled to. */
export function SheetPlace() {
  const sheet = useShownPlace(useAddress().sheet)
  const frameName = useAppState((state) => state.frame.name)
  const Place = PLACES[sheet]

  useEffect(() => {
    const name = SHEETS.find(({ id }) => id === sheet)?.name ?? 'The whole set'
    document.title = `${name} · ${frameName} · Preweigh`
  }, [sheet, frameName])

  useScrollKept(sheet)
  useEffect(() => {
    showGhost(null)
  }, [sheet])
  return (
    <Suspense fallback={<div className="drawn-sheet sheet-coming" />}>
      <Place />
    </Suspense>
  )
}

const scrolled = new Map<PlaceId, number>()

function useScrollKept(sheet: PlaceId): void {
  useLayoutEffect(() => {
    // A sheet may be a moment in coming; until it is as high as it was, the browser could not
    // scroll so far.
    const wanted = scrolled.get(sheet) ?? 0
    if (wanted === 0) window.scrollTo({ top: 0 })
    const observer = new ResizeObserver(() => {
      if (document.documentElement.scrollHeight - window.innerHeight < wanted) return
      window.scrollTo({ top: wanted })
      observer.disconnect()
    })
    if (wanted > 0) observer.observe(document.body)
    const keep = () => {
      scrolled.set(sheet, window.scrollY)
    }
    window.addEventListener('scrollend', keep)
    return () => {
      observer.disconnect()
      window.removeEventListener('scrollend', keep)
    }
  }, [sheet])
}
