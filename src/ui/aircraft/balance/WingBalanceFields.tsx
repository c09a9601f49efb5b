import { memo } from 'react'
import type { WingSetup } from '../../../core/model/aircraft.ts'
import { useAppState } from '../../appContext.ts'
import { noseMmOf } from '../../../core/aircraft/balance/wingBalance.ts'
import { PLACE_LIMITS, WING_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { usePutAircraft } from '../useAircraft.ts'

const TENTHS = { step: 1, digits: 1, unit: 'mm' } as const

/** Where the wing sits and where its builder wants the balance point. */
export const WingBalanceFields = memo(function WingBalanceFields() {
  const wing = useAppState((state) => state.frame.aircraft.wing)
  const putAircraft = usePutAircraft()
  if (wing === null) return null
  const put = (patch: Partial<WingSetup>) => {
    putAircraft({ wing: { ...wing, ...patch } }, 'change where it balances')
  }
  const [low, high] = wing.balanceMm
  return (
    <div className="chord-fields">
      <NumberBox
        {...TENTHS}
        label="Leading edge, forward of the middle"
        limits={WING_LIMITS.leadingEdgeMm}
        value={wing.leadingEdgeMm}
        onChange={(leadingEdgeMm) => {
          put({ leadingEdgeMm })
        }}
      />
      <NumberBox
        {...TENTHS}
        label="Balance wanted from, behind the leading edge"
        limits={WING_LIMITS.leadingEdgeMm}
        value={low}
        onChange={(mm) => {
          put({ balanceMm: [mm, Math.max(mm, high)] })
        }}
      />
      <NumberBox
        {...TENTHS}
        label="Balance wanted to, behind the leading edge"
        limits={WING_LIMITS.leadingEdgeMm}
        value={high}
        onChange={(mm) => {
          put({ balanceMm: [Math.min(mm, low), mm] })
        }}
      />
      <NumberBox
        {...TENTHS}
        label="Nose weight would sit, forward of the middle"
        limits={PLACE_LIMITS.positionMm}
        value={noseMmOf(wing)}
        onChange={(noseMm) => {
          put({ noseMm })
        }}
      />
    </div>
  )
})
