import { Button } from 'react-aria-components'
import { scaleLinear } from 'd3-scale'
import type { FrameSum } from '../../../core/frame/types.ts'
import type { Variant } from '../../../core/model/frame.ts'
import { formatMoney, withSign } from '../../../core/words/format.ts'
import { massUnit } from '../../../core/words/shownUnits.ts'
import { TextBox } from '../../aircraft/TextBox.tsx'
import { useAppState } from '../../appContext.ts'
import { showGhost } from '../../head/ghost.ts'
import { showGrams, showMass, showTime } from '../../show.ts'

interface VariantTableProps {
  /** Of the frame as it stands. */
  readonly sum: FrameSum
  readonly variants: readonly Variant[]
  readonly sums: ReadonlyMap<string, FrameSum | null>
  readonly onTake: (variant: Variant) => void
  readonly onRename: (variant: Variant, name: string) => void
  readonly onRemove: (variant: Variant) => void
}

const BAR_PX = 240

/** The frame and its variants, a row each, their masses on one scale. */
export function VariantTable(props: VariantTableProps) {
  const { sum, variants, sums, onTake, onRename, onRemove } = props
  const currency = useAppState((state) => state.frame.prices.currency)
  const limitG = sum.limits.strictest?.printedG ?? null
  const all = [sum, ...variants.flatMap(({ id }) => sums.get(id) ?? [])]
  const ends = all.flatMap(({ printed: { massG } }) => [massG.low, massG.high])
  const x = scaleLinear([Math.min(...ends), Math.max(...ends)], [4, BAR_PX - 4])
  const cells = (of: FrameSum) => {
    const grams = showGrams(of.printed.massG)
    const moreG = of.printed.massG.mid - sum.printed.massG.mid
    return (
      <>
        <td>
          <strong>{grams.mid}</strong>
          <span className="range">{grams.range}</span>
        </td>
        <td>{of === sum ? '' : withSign(moreG, showMass(moreG))}</td>
        <td>{showGrams(of.allUpG).mid}</td>
        <td>{formatMoney(of.withSpares.cost.mid, currency)}</td>
        <td>{showTime(of.withSpares.timeS).mid}</td>
        <td className="variant-bar" aria-hidden="true">
          <MassBar of={of} x={x} limitG={limitG} />
        </td>
      </>
    )
  }
  return (
    <div className="wide-table">
      <table className="choose-table variant-table">
        <caption className="unseen">The frame and its variants</caption>
        <thead>
          <tr>
            <th scope="col">Variant</th>
            <th scope="col">Printed, {massUnit()}</th>
            <th scope="col">Change</th>
            <th scope="col">All up</th>
            <th scope="col">Cost</th>
            <th scope="col">Hours</th>
            <th scope="col" className="variant-bar">
              <span className="unseen">On one scale</span>
            </th>
            <th scope="col">
              <span className="unseen">What to do with it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          <tr aria-current="true">
            <th scope="row">As it stands</th>
            {cells(sum)}
            <td />
          </tr>
          {variants.map((variant) => {
            const own = sums.get(variant.id) ?? null
            const ghost =
              own === null ? null : { massG: own.printed.massG.mid, words: variant.name }
            return (
              <tr
                key={variant.id}
                onPointerEnter={() => {
                  showGhost(ghost)
                }}
                onPointerLeave={() => {
                  showGhost(null)
                }}
              >
                <th scope="row">
                  <TextBox
                    label="Name"
                    value={variant.name}
                    onChange={(name) => {
                      onRename(variant, name)
                    }}
                  />
                </th>
                {own === null ? <td colSpan={6}>Its layers are being counted.</td> : cells(own)}
                <td>
                  <Button
                    className="quiet"
                    aria-label={`Take variant ${variant.name} whole`}
                    onPress={() => {
                      showGhost(null)
                      onTake(variant)
                    }}
                  >
                    Take
                  </Button>
                  <Button
                    className="quiet"
                    aria-label={`Remove variant ${variant.name}`}
                    onPress={() => {
                      showGhost(null)
                      onRemove(variant)
                    }}
                  >
                    Remove
                  </Button>
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}

interface MassBarProps {
  readonly of: FrameSum
  readonly x: (massG: number) => number
  readonly limitG: number | null
}

/** Its range and its middle; the limit as on the ruler. */
function MassBar({ of, x, limitG }: MassBarProps) {
  const { low, mid, high } = of.printed.massG
  const limit = limitG === null ? null : x(limitG)
  return (
    <svg viewBox={`0 0 ${BAR_PX} 24`} width={BAR_PX} height={24} aria-hidden="true">
      <path className="curve-line" d={`M${x(low)} 7v10M${x(low)} 12H${x(high)}M${x(high)} 7v10`} />
      <rect className="curve-now" x={x(mid) - 1.5} y={3} width={3} height={18} />
      {limit === null || limit < 0 || limit > BAR_PX ? null : (
        <path className="curve-limit" d={`M${limit} 0v24`} />
      )}
    </svg>
  )
}
