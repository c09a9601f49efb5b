import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import type { Range } from '../../core/model/figures.ts'
import { exactRange } from '../../core/model/ranges.ts'
import { formatMoney, withSign } from '../../core/words/format.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { showGhost } from '../head/ghost.ts'
import { frameThen, NOT_ASKED, pricerOf } from './chosenParts.ts'
import { usePartEdit } from '../part/usePartEdit.ts'
import { showGrams, showMass, showTime } from '../show.ts'

const SHARES_PCT = [0, 5, 10, 15, 20, 30, 40, 50, 60, 80, 100]

/**
 * The part at one share of infill after the other, and where each would take the frame. Its layers
 * need no new count.
 */
export function InfillTable({ row: { part } }: { readonly row: LedgerRow }) {
  const then = useAppState(frameThen)
  const { currency } = then.setup.prices
  const write = usePartEdit(part.id)
  const tried = useMemo(() => {
    const row = then.rows.find((one) => one.part === part)
    const census = then.censuses.get(part.id)
    if (row === undefined || census === undefined) return null
    const price = pricerOf(then, row, census, NOT_ASKED)
    const at = (infillPct: number) =>
      price(census, { recipe: { ...part.recipe, infillPct }, materialId: part.materialId })
    const shares = [...new Set([...SHARES_PCT, part.recipe.infillPct])].toSorted((a, b) => a - b)
    const now = at(part.recipe.infillPct)
    return { row, now, lines: shares.map((pct) => ({ pct, one: at(pct) })) }
  }, [then, part])
  if (tried === null) return <p className="hint">Its layers are being counted.</p>
  const { pieceG } = tried.row
  const printed = part.quantity + part.spares
  return (
    <table className="choose-table">
      <thead>
        <tr>
          <th scope="col">Infill</th>
          <th scope="col">One piece</th>
          <th scope="col">Frame, printed</th>
          <th scope="col">Change</th>
          <th scope="col">Cost of one</th>
          <th scope="col">Hours of one</th>
        </tr>
      </thead>
      <tbody>
        {tried.lines.map(({ pct, one }) => {
          const moreG = one.massG - tried.now.massG
          const isNow = pct === part.recipe.infillPct
          const frameG = then.printedG + moreG
          const ownG = one.massG / part.quantity
          const ghost = isNow ? null : { massG: frameG, words: `${pct} %` }
          return (
            <tr
              key={pct}
              aria-current={isNow ? 'true' : undefined}
              onPointerEnter={() => {
                showGhost(ghost)
              }}
              onPointerLeave={() => {
                showGhost(null)
              }}
            >
              <th scope="row">
                {/* A button in either case: the one pressed becomes what it is, and keeps the focus. */}
                <Button
                  className="quiet"
                  aria-label={isNow ? `${pct} %, as it is` : `Take ${pct} % infill`}
                  aria-pressed={isNow}
                  onFocus={() => {
                    showGhost(ghost)
                  }}
                  onBlur={() => {
                    showGhost(null)
                  }}
                  onPress={() => {
                    if (isNow) return
                    showGhost(null)
                    write.edit({ recipe: { infillPct: pct } })
                  }}
                >
                  {isNow ? <strong>{pct} %, as it is</strong> : `${pct} %`}
                </Button>
              </th>
              <td>
                {showMass(ownG)}
                <span className="range">{rangeOf(ownG, pieceG)}</span>
              </td>
              <td>{showMass(frameG)}</td>
              <td>{isNow ? '' : withSign(moreG, showMass(moreG))}</td>
              <td>{formatMoney(one.cost / printed, currency)}</td>
              <td>{showTime(exactRange(one.timeS / printed)).mid}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

/**
 * A range as wide, for its size, as that of the part as it is: the same errors stand behind both.
 */
function rangeOf(massG: number, { low, mid, high }: Range): string {
  return mid > 0
    ? showGrams({ low: (massG * low) / mid, mid: massG, high: (massG * high) / mid }).range
    : ''
}
