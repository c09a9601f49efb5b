import { Button } from 'react-aria-components'
import { VARIANTS_MOST } from '../../../core/data/limits.ts'
import type { Part, PartWay, Variant } from '../../../core/model/frame.ts'
import { frameSum } from '../../../state/store/derived.ts'
import { Section } from '../../aircraft/Section.tsx'
import { useActions, useAppState } from '../../appContext.ts'
import { useKeepVariant } from './useKeepVariant.ts'
import { useVariantSums } from './useVariantSums.ts'
import { VariantDifferences } from './VariantDifferences.tsx'
import { VariantTable } from './VariantTable.tsx'

const NONE: readonly Variant[] = []

/** Up to four variants of the frame beside what stands, to take whole or part by part. */
export function VariantsSection() {
  const variants = useAppState((state) => state.frame.variants ?? NONE)
  const parts = useAppState((state) => state.frame.parts)
  const sum = useAppState(frameSum)
  const sums = useVariantSums(variants)
  const { takeWays, putVariants } = useActions()
  const keep = useKeepVariant()
  const put = (next: readonly Variant[], what: string) => {
    putVariants(next, what)
  }
  return (
    <Section
      title="Variants"
      summary={
        variants.length === 0
          ? 'none kept; up to four stand beside the frame'
          : `${variants.length} kept beside the frame`
      }
      onPaper={variants.length > 0}
    >
      <div className="craft-full variants">
        <div className="button-line">
          <Button
            className="quiet"
            isDisabled={variants.length >= VARIANTS_MOST || parts.length === 0}
            onPress={() => {
              keep(freeName(variants), Object.fromEntries(parts.map(wayOf)))
            }}
          >
            Keep what stands as a variant
          </Button>
        </div>
        {variants.length === 0 ? null : (
          <>
            <VariantTable
              sum={sum}
              variants={variants}
              sums={sums}
              onTake={({ ways, name }) => {
                takeWays(ways, `take variant “${name}”`)
              }}
              onRename={(variant, name) => {
                const next = variants.map((one) => (one === variant ? { ...one, name } : one))
                put(next, `rename variant “${variant.name}”`)
              }}
              onRemove={(variant) => {
                put(
                  variants.filter((one) => one !== variant),
                  `remove variant “${variant.name}”`,
                )
              }}
            />
            <VariantDifferences
              parts={parts}
              variants={variants}
              onTake={(part, way, { name }) => {
                takeWays({ [part.id]: way }, `take “${part.name}” of variant “${name}”`)
              }}
            />
          </>
        )}
      </div>
    </Section>
  )
}

function wayOf({ id, recipe, materialId }: Part): readonly [string, PartWay] {
  return [id, { recipe, materialId }]
}

const LETTERS = ['A', 'B', 'C', 'D', 'E'] as const

/** The first letter that no variant is called by. */
function freeName(variants: readonly Variant[]): string {
  return LETTERS.find((letter) => variants.every(({ name }) => name !== letter)) ?? 'Variant'
}
