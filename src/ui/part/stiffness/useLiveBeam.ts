import { useCallback, useMemo } from 'react'
import { beamGives } from '../../../core/choose/gives/beamGives.ts'
import type { Gives } from '../../../core/choose/gives/types.ts'
import { laidRecipe } from '../../../core/figures/laidRecipe.ts'
import type { Material } from '../../../core/model/figures.ts'
import type { Recipe } from '../../../core/model/settings.ts'
import type { LedgerRow } from '../../../state/store/derived.ts'
import { useAppState } from '../../appContext.ts'
import type { StepEffect } from '../useSteps.ts'
import { useSections, type KnownSections } from './useSections.ts'

interface LiveBeam extends Pick<KnownSections, 'own' | 'load'> {
  /** As the part stands. */
  readonly now: Gives | null
  /** Whether one sum of its solid model stands behind it. */
  readonly isScaled: boolean
  readonly givesOf: (effect: StepEffect) => Gives | null
}

/** The part as a beam while its sliders move, and what each step would make of it. */
export function useLiveBeam(row: LedgerRow, effects: readonly StepEffect[]): LiveBeam {
  const { part, material, sum } = row
  const { recipe, zones } = part
  const printer = useAppState((state) => state.frame.printer)
  const patches = useMemo(
    () => effects.flatMap(({ step }) => (step.geometry === null ? [] : [step.geometry])),
    [effects],
  )
  const { own, load, slender, scale } = useSections(row, patches)
  const pieceG = sum?.pieceG.mid ?? 0
  const tell = useMemo(() => {
    if (slender.size === 0) return null
    const lay = (one: Recipe) => laidRecipe({ recipe: one, zones }, printer)
    const givesOf = beamGives(slender, lay, load, scale)
    return (one: Recipe, plastic: Material, massG: number): Gives | null =>
      givesOf({ recipe: one, material: plastic, massG })
  }, [slender, zones, printer, load, scale])
  const now = useMemo(
    () => tell?.(recipe, material, pieceG) ?? null,
    [tell, recipe, material, pieceG],
  )
  const givesOf = useCallback(
    ({ step, pieceG: thenG }: StepEffect): Gives | null =>
      tell?.({ ...recipe, ...step.recipe }, step.material ?? material, thenG) ?? null,
    [tell, recipe, material],
  )
  return { own, load, now, givesOf, isScaled: scale !== undefined }
}
