import { Button } from 'react-aria-components'
import { changeWords } from '../../../core/choose/sayings.ts'
import type { Part, PartWay, Variant } from '../../../core/model/frame.ts'
import { materialOf } from '../../../state/store/materialOf.ts'
import { useAppState } from '../../appContext.ts'

interface VariantDifferencesProps {
  readonly parts: readonly Part[]
  readonly variants: readonly Variant[]
  readonly onTake: (part: Part, way: PartWay, variant: Variant) => void
}

/** What each variant has other than the frame, part by part; each is taken by itself. */
export function VariantDifferences({ parts, variants, onTake }: VariantDifferencesProps) {
  const frame = useAppState((state) => state.frame)
  const told = ({ recipe, materialId }: PartWay) => ({
    ...recipe,
    material: materialOf(frame, materialId).name,
  })
  const rows = parts.flatMap((part, i) => {
    const cells = variants.map((variant) => {
      const way = variant.ways[part.id]
      return { variant, way, words: way === undefined ? [] : wordsOf(part, way, told) }
    })
    return cells.some(({ words }) => words.length > 0) ? [{ part, item: i + 1, cells }] : []
  })
  if (rows.length === 0) return <p className="hint">They are as the frame stands.</p>
  return (
    <div className="wide-table">
      <table className="choose-table variant-differences">
        <caption>What is other than as it stands; each can be taken by itself</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            {variants.map(({ id, name }) => (
              <th key={id} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ part, item, cells }) => (
            <tr key={part.id}>
              <th scope="row">
                {item} {part.name}
              </th>
              {cells.map(({ variant, way, words }) => (
                <td key={variant.id}>
                  {way === undefined || words.length === 0 ? (
                    'as it stands'
                  ) : (
                    <Button
                      className="quiet"
                      aria-label={`Take ${words.join(', ')} of ${variant.name} for ${part.name}`}
                      onPress={() => {
                        onTake(part, way, variant)
                      }}
                    >
                      {words.join(', ')}
                    </Button>
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

type Told = Parameters<typeof changeWords>[0]

/** Settings the words do not know are told as what they are: something else. */
function wordsOf(part: Part, way: PartWay, told: (way: PartWay) => Told): readonly string[] {
  const words = changeWords(told(part), told(way))
  const isSame = JSON.stringify(part.recipe) === JSON.stringify(way.recipe)
  return words.length > 0 || isSame ? words : ['other settings']
}
