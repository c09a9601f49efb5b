import { useMemo } from 'react'
import { mineOf, type FrameMine } from '../../state/store/workshop.ts'
import { useAppState } from '../appContext.ts'

/** What is the builder's, the usual where nothing was said yet. */
export function useMine(): FrameMine {
  const workshop = useAppState((state) => state.workshop)
  return useMemo(() => mineOf(workshop, navigator.language), [workshop])
}
