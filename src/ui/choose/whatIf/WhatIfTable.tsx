import { Button } from 'react-aria-components'
import { formatMoney } from '../../../core/words/format.ts'
import { massUnit } from '../../../core/words/shownUnits.ts'
import { showGrams, showNumber, showTime } from '../../show.ts'
import { giveWords, toneWords } from '../../part/stiffness/BeamLine.tsx'
import type { CurvesProps } from './MeasureCurves.tsx'
import { PANEL_NAMES, pointWords } from './pointWords.ts'

/** The figures behind the small pictures; each value is a button that takes it. */
export function WhatIfTable({
  partName,
  panels,
  nameOf,
  onTake,
  twinId,
  currency,
}: CurvesProps & { readonly currency: string }) {
  return (
    <details id={twinId} className="what-if-table">
      <summary>All figures as a table</summary>
      <div className="wide-table">
        <table className="choose-table">
          <caption className="unseen">The frame over each setting of {partName}</caption>
          <thead>
            <tr>
              <th scope="col">Setting</th>
              <th scope="col">Printed, {massUnit()}</th>
              <th scope="col">Cost</th>
              <th scope="col">Hours</th>
              <th scope="col">Stiffness</th>
              <th scope="col">Gives</th>
              <th scope="col">First tone</th>
            </tr>
          </thead>
          {panels.map(({ key, points }) => (
            <tbody key={key}>
              {points.map((point) => {
                const words = pointWords(key, point.way, nameOf)
                const { massG, cost, timeS, stiffness, gives } = point.worth
                return (
                  <tr key={words} aria-current={point.isNow ? 'true' : undefined}>
                    <th scope="row">
                      <Button
                        className="quiet"
                        aria-pressed={point.isNow}
                        onPress={() => {
                          onTake(point)
                        }}
                      >
                        {PANEL_NAMES[key]} {words}
                      </Button>
                    </th>
                    <td>{showGrams({ low: massG, mid: massG, high: massG }).mid}</td>
                    <td>{formatMoney(cost, currency)}</td>
                    <td>{showTime({ low: timeS, mid: timeS, high: timeS }).mid}</td>
                    <td>{stiffness === Infinity ? '–' : `${showNumber(100 * stiffness, 0)} %`}</td>
                    <td>{gives === null ? '–' : giveWords(gives)}</td>
                    <td>
                      {(gives?.firstHz ?? null) === null ? '–' : toneWords(gives?.firstHz ?? 0)}
                    </td>
                  </tr>
                )
              })}
            </tbody>
          ))}
        </table>
      </div>
    </details>
  )
}
