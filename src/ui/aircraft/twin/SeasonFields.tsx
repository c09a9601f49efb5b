import { memo } from 'react'
import type { SeasonSetup } from '../../../core/model/aircraft.ts'
import { useAppState, useReadState } from '../../appContext.ts'
import { SEASON_LIMITS, inPercent } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { usePutAircraft } from '../useAircraft.ts'

interface SeasonFieldsProps {
  /** Which carbon frame stands beside the printed one; null for none. */
  readonly frame: 'bought' | 'cut' | null
}

/** How much is flown, how often it goes wrong, and what then breaks. */
export const SeasonFields = memo(function SeasonFields({ frame }: SeasonFieldsProps) {
  const setup = useAppState((state) => state.frame.aircraft.season)
  const currency = useAppState((state) => state.frame.prices.currency)
  const parts = useAppState((state) => state.frame.parts)
  const putAircraft = usePutAircraft()
  const put = (patch: Partial<SeasonSetup>) => {
    putAircraft({ season: { ...setup, ...patch } }, 'change the season')
  }
  return (
    <>
      <div className="item-fields">
        <NumberBox
          label="Flights"
          limits={SEASON_LIMITS.flights}
          value={setup.flights}
          step={1}
          onChange={(flights) => {
            put({ flights })
          }}
        />
        <NumberBox
          label="End in a crash"
          limits={inPercent(SEASON_LIMITS.crashesPerFlight)}
          value={setup.crashesPerFlight * 100}
          step={1}
          digits={1}
          unit="%"
          onChange={(percent) => {
            put({ crashesPerFlight: percent / 100 })
          }}
        />
        {frame === 'bought' ? (
          <NumberBox
            label="A carbon part"
            limits={SEASON_LIMITS.carbonPartPrice}
            value={setup.carbonPartPrice}
            step={0.01}
            unit={currency}
            onChange={(carbonPartPrice) => {
              put({ carbonPartPrice })
            }}
          />
        ) : null}
        {frame === null ? null : (
          <>
            <NumberBox
              label="Carbon lead time"
              limits={SEASON_LIMITS.carbonLeadDays}
              value={setup.carbonLeadDays}
              step={1}
              digits={1}
              unit="days"
              onChange={(carbonLeadDays) => {
                put({ carbonLeadDays })
              }}
            />
            <NumberBox
              label="Carbon breaks"
              limits={inPercent(SEASON_LIMITS.carbonBreakFactor)}
              value={(setup.carbonBreakFactor ?? 1) * 100}
              step={1}
              digits={1}
              unit="%"
              hint="100 %: as often as the same part printed."
              onChange={(percent) => {
                put({ carbonBreakFactor: percent / 100 })
              }}
            />
          </>
        )}
      </div>
      <h5>Chance that one crash breaks a piece of it</h5>
      <div className="item-fields">
        {parts.map(({ id, name }) => (
          <BreakShare key={id} id={id} name={name} />
        ))}
      </div>
    </>
  )
})

interface BreakShareProps {
  readonly id: string
  readonly name: string
}

const BreakShare = memo(function BreakShare({ id, name }: BreakShareProps) {
  const share = useAppState((state) => state.frame.aircraft.season.breakShare[id] ?? 0)
  const read = useReadState()
  const putAircraft = usePutAircraft()
  return (
    <NumberBox
      label={name}
      limits={inPercent(SEASON_LIMITS.breakShare)}
      value={share * 100}
      step={1}
      digits={1}
      unit="%"
      onChange={(percent) => {
        const { season } = read().frame.aircraft
        const breakShare = { ...season.breakShare, [id]: percent / 100 }
        putAircraft({ season: { ...season, breakShare } }, 'change the season')
      }}
    />
  )
})
