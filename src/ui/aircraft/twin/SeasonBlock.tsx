import type { SeasonSetup } from '../../../core/aircraft.ts'
import { formatMoney, formatNumber, formatPercent } from '../../../core/figures/format.ts'
import type { SeasonReport, TwinEntry } from '../../../core/report/types.ts'
import type { SeasonSide } from '../../../core/season/side.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { usePutAircraft } from '../useAircraft.ts'
import { spanWords } from '../words.ts'

interface SeasonBlockProps {
  readonly setup: SeasonSetup
  readonly season: SeasonReport
  readonly twinParts: readonly TwinEntry[]
  readonly currency: string
}

/** A season of flying and breaking, on both frames. */
export function SeasonBlock({ setup, season, twinParts, currency }: SeasonBlockProps) {
  const putAircraft = usePutAircraft()
  const put = (patch: Partial<SeasonSetup>) => {
    putAircraft({ season: { ...setup, ...patch } }, 'change the season')
  }
  const sides: { readonly name: string; readonly side: SeasonSide }[] = [
    { name: 'Printed', side: season.printed },
  ]
  if (season.carbon !== null) {
    sides.push({
      name: season.carbonFrame === 'bought' ? 'Bought carbon' : 'Cut plate',
      side: season.carbon,
    })
  }
  const money = (value: number) => formatMoney(value, currency)
  const outcomes = season.printed.lines
  return (
    <>
      <h3>A season played out</h3>
      <div className="item-fields">
        <NumberBox
          label="Flights"
          value={setup.flights}
          min={0}
          max={1000}
          step={1}
          digits={0}
          onChange={(flights) => {
            put({ flights })
          }}
        />
        <NumberBox
          label="End in a crash"
          value={setup.crashesPerFlight * 100}
          min={0}
          max={100}
          step={1}
          digits={1}
          unit="%"
          onChange={(percent) => {
            put({ crashesPerFlight: percent / 100 })
          }}
        />
        <NumberBox
          label="A carbon part"
          value={setup.carbonPartPrice}
          min={0}
          max={100000}
          step={0.01}
          unit={currency}
          onChange={(carbonPartPrice) => {
            put({ carbonPartPrice })
          }}
        />
        <NumberBox
          label="Its lead time"
          value={setup.carbonLeadDays}
          min={0}
          max={365}
          step={1}
          digits={0}
          unit="days"
          onChange={(carbonLeadDays) => {
            put({ carbonLeadDays })
          }}
        />
        <NumberBox
          label="Carbon breaks"
          value={(setup.carbonBreakFactor ?? 1) * 100}
          min={0}
          max={100}
          step={1}
          digits={0}
          unit="%"
          hint="100 %: as often as the same part printed."
          onChange={(percent) => {
            put({ carbonBreakFactor: percent / 100 })
          }}
        />
      </div>
      <p className="hint">
        Chance that one crash breaks one piece of the part. Left at 0 it never breaks.
      </p>
      <div className="item-fields">
        {twinParts.map(({ partId, name }) => (
          <NumberBox
            key={partId}
            label={name}
            value={(setup.breakShare[partId] ?? 0) * 100}
            min={0}
            max={100}
            step={1}
            digits={0}
            unit="%"
            onChange={(percent) => {
              put({ breakShare: { ...setup.breakShare, [partId]: percent / 100 } })
            }}
          />
        ))}
      </div>
      {outcomes.length === 0 ? null : (
        <>
          <table className="sides">
            <caption className="unseen">The season on both frames</caption>
            <thead>
              <tr>
                <td />
                {sides.map(({ name }) => (
                  <th key={name} scope="col" className="figures">
                    {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              <tr>
                <th scope="row">Money, frame and spares included</th>
                {sides.map(({ name, side }) => (
                  <td key={name} className="figures">
                    {money(side.cost.mid)}
                    <span className="range">
                      {money(side.cost.low)}–{money(side.cost.high)}
                    </span>
                  </td>
                ))}
              </tr>
              <tr>
                <th scope="row">Days grounded</th>
                {sides.map(({ name, side }) => (
                  <td key={name} className="figures">
                    {formatNumber(side.groundedDays.mid, undefined, 1)}
                    <span className="range">{spanWords(side.groundedDays, 'days', 1)}</span>
                  </td>
                ))}
              </tr>
              <tr>
                <th scope="row">Flights until something breaks</th>
                {sides.map(({ name, side }) => (
                  <td key={name} className="figures">
                    {side.flightsToFirst === null
                      ? 'nothing breaks'
                      : formatNumber(side.flightsToFirst, undefined, 0)}
                  </td>
                ))}
              </tr>
            </tbody>
          </table>
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
                  <td className="figures">{formatNumber(line.breaks, undefined, 1)}</td>
                  <td className="figures">{formatPercent(line.firstToBreak)}</td>
                  <td className="figures">{formatPercent(line.runOut)}</td>
                  <td className="figures">
                    <b>{line.sparesWanted}</b>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="hint">
            {formatNumber(season.printed.crashes, undefined, 1)} crashes to expect, at random
            (Poisson). The band holds nine seasons in ten. Spares wanted keep running out below 5 %.
          </p>
        </>
      )}
    </>
  )
}
