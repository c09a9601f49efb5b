import { formatMoney, formatPercent } from '../../../core/words/format.ts'
import type { SeasonReport } from '../../../core/aircraft/report/types.ts'
import type { SeasonSide } from '../../../core/aircraft/season/side.ts'
import type { Part } from '../../../core/model/frame.ts'
import { SideBySide, withSpan, type NamedSide } from './SideBySide.tsx'
import { figureWords, moneySpan, spanWords } from '../words.ts'

interface SeasonTablesProps {
  readonly season: SeasonReport
  readonly parts: readonly Part[]
  readonly currency: string
}

/** How a season of flying and breaking ends, on both frames. */
export function SeasonTables({ season, parts, currency }: SeasonTablesProps) {
  const sides: NamedSide<SeasonSide>[] = [{ name: 'Printed', side: season.printed }]
  if (season.carbon !== null) {
    sides.push({
      name: season.carbonFrame === 'bought' ? 'Bought carbon' : 'Cut plate',
      side: season.carbon,
    })
  }
  const outcomes = season.printed.lines
  const sparesOf = (partId: string): number => parts.find(({ id }) => id === partId)?.spares ?? 0
  if (outcomes.length === 0) {
    return <p className="hint">Nothing breaks yet: type above how often a crash breaks a part.</p>
  }
  return (
    <>
      <SideBySide
        caption="The season on both frames"
        columns={sides}
        rows={[
          [
            'Money, frame and spares included',
            ({ cost }) => withSpan(formatMoney(cost.mid, currency), moneySpan(cost, currency)),
          ],
          [
            'Days grounded',
            ({ groundedDays }) =>
              withSpan(figureWords(groundedDays.mid, 1), spanWords(groundedDays, 'days', 1)),
          ],
          [
            'Flights until something breaks',
            ({ flightsToFirst }) =>
              flightsToFirst === null ? 'nothing breaks' : figureWords(flightsToFirst, 0),
          ],
        ]}
      />
      <table className="sides">
        <caption className="unseen">Spares to print</caption>
        <thead>
          <tr>
            <th scope="col">Printed part</th>
            <th scope="col" className="figures">
              Breaks
            </th>
            <th scope="col" className="figures">
              Breaks first
            </th>
            <th scope="col" className="figures">
              Runs out
            </th>
            <th scope="col" className="figures">
              Spares wanted
            </th>
          </tr>
        </thead>
        <tbody>
          {outcomes.map((line) => (
            <tr key={line.partId}>
              <th scope="row">{line.name}</th>
              <td className="figures">{figureWords(line.breaks, 1)}</td>
              <td className="figures">{formatPercent(line.firstToBreak)}</td>
              <td className="figures">{formatPercent(line.runOut)}</td>
              <td className="figures">
                <b>{line.sparesWanted}</b>{' '}
                <span className="range">{sparesOf(line.partId)} there</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="hint">
        Breaks first adds up to 100 %: where one crash breaks several parts, each counts its share.{' '}
        {figureWords(season.printed.crashes, 1)} crashes to expect, at random (Poisson). The band
        holds nine seasons in ten. Spares wanted keep running out below 5 %.
      </p>
    </>
  )
}
