import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import { partFigures } from '../../core/figures/part.ts'
import type { Range } from '../../core/model/figures.ts'
import { formatMoney, withSign } from '../../core/words/format.ts'
import { frameSum, type LedgerRow } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { showGhost } from '../head/ghost.ts'
import { censusOf } from '../ledger/workFacts.ts'
import { usePartEdit } from '../part/usePartEdit.ts'
import { MassCurves } from './MassCurves.tsx'
import { showGrams, showMass, showTime } from '../show.ts'

const SHARES_PCT = [0, 5, 10, 15, 20, 30, 40, 50, 60, 80, 100]

/**
 * The part at one share of infill after the other, and where each would take the frame. Its layers
 * need no new count.
 */
export function InfillTable({ row }: { readonly row: LedgerRow }) {
  const { part, material, work, sum } = row
  const census = censusOf(work)
  const printer = useAppState((state) => state.frame.printer)
  const prices = useAppState((state) => state.frame.prices)
  const printedG = useAppState((state) => frameSum(state).printed.massG.mid)
  const write = usePartEdit(part.id)
  const { recipe, zones, quantity } = part
  const tried = useMemo(() => {
    if (census === null) return null
    const at = (infillPct: number) =>
      partFigures(
        census,
        laidRecipe({ recipe: { ...recipe, infillPct }, zones }, printer),
        material,
        printer,
        prices,
      )
    const shares = [...new Set([...SHARES_PCT, recipe.infillPct])].toSorted((a, b) => a - b)
    return { now: at(recipe.infillPct), lines: shares.map((pct) => ({ pct, figures: at(pct) })) }
  }, [census, recipe, zones, material, printer, prices])
  if (tried === null || sum === null) return <p className="hint">Its layers are being counted.</p>
  // What the scale taught of this part holds at any infill.
  const ratio = sum.pieceG.mid / tried.now.massG.mid
  const points = tried.lines.map(({ pct, figures }) => ({
    words: `${pct} %`,
    value: pct,
    frameG: printedG + (figures.massG.mid - tried.now.massG.mid) * ratio * quantity,
    isNow: pct === recipe.infillPct,
  }))
  return (
    <>
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
          {tried.lines.map(({ pct, figures }) => {
            const moreG = (figures.massG.mid - tried.now.massG.mid) * ratio * quantity
            const isNow = pct === recipe.infillPct
            const frameG = printedG + moreG
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
                  {showMass(figures.massG.mid * ratio)}
                  <span className="range">{rangeOf(figures.massG.mid * ratio, sum.pieceG)}</span>
                </td>
                <td>{showMass(frameG)}</td>
                <td>{isNow ? '' : withSign(moreG, showMass(moreG))}</td>
                <td>{formatMoney(figures.cost.mid, prices.currency)}</td>
                <td>{showTime(figures.timeS).mid}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
      <MassCurves row={row} infill={points} />
    </>
  )
}

/** A range as wide, for its size, as that of the part as it is: the same errors stand behind both. */
function rangeOf(massG: number, { low, mid, high }: Range): string {
  return mid > 0
    ? showGrams({ low: (massG * low) / mid, mid: massG, high: (massG * high) / mid }).range
    : ''
}
