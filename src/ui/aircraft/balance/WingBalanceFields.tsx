import { memo } from 'react'
import type { WingSetup } from '../../../core/model/aircraft.ts'
import { useAppState } from '../../appContext.ts'
import { PLACE_LIMITS, WING_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { usePutAircraft } from '../useAircraft.ts'

interface WingBalanceFieldsProps {
  readonly noseMm: number
  readonly onNose: (noseMm: number) => void
}

const FURTHEST = { min: -10000, max: 10000, step: 1, digits: 1, unit: 'mm' } as const

/** Where the wing sits and where its builder wants the balance point. */
export const WingBalanceFields = memo(function WingBalanceFields({
  noseMm,
  onNose,
}: WingBalanceFieldsProps) {
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
        {...FURTHEST}
        label="Leading edge, forward of the middle"
        limits={WING_LIMITS.leadingEdgeMm}
        value={wing.leadingEdgeMm}
        onChange={(leadingEdgeMm) => {
          put({ leadingEdgeMm })
        }}
      />
      <NumberBox
        {...FURTHEST}
        label="Balance wanted from, behind the leading edge"
        limits={WING_LIMITS.leadingEdgeMm}
        value={low}
        onChange={(mm) => {
          put({ balanceMm: [mm, Math.max(mm, high)] })
        }}
      />
      <NumberBox
        {...FURTHEST}
        label="Balance wanted to, behind the leading edge"
        limits={WING_LIMITS.leadingEdgeMm}
        value={high}
        onChange={(mm) => {
          put({ balanceMm: [Math.min(mm, low), mm] })
        }}
      />
      <NumberBox
        {...FURTHEST}
        label="Nose weight would sit, forward of the middle"
        limits={PLACE_LIMITS.positionMm}
        value={noseMm}
        onChange={onNose}
      />
    </div>
  )
})
