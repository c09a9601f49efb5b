import { useCallback } from 'react'
import { VARIANTS_MOST } from '../../../core/data/limits.ts'
import type { PartWay } from '../../../core/model/frame.ts'
import { newId } from '../../../state/store/newId.ts'
import { useActions, useReadState } from '../../appContext.ts'

/**
 * Keeps ways of the parts as a variant of the frame; says so where there is no room for one more.
 */
export function useKeepVariant() {
  const { putVariants, tell } = useActions()
  const readState = useReadState()
  return useCallback(
    (name: string, ways: Readonly<Record<string, PartWay>>) => {
      const { variants = [] } = readState().frame
      if (variants.length >= VARIANTS_MOST) {
        tell(`${VARIANTS_MOST} variants are kept already. Remove one first.`)
        return
      }
      putVariants([...variants, { id: newId(), name, ways }], `keep variant “${name}”`)
    },
    [putVariants, tell, readState],
  )
}
