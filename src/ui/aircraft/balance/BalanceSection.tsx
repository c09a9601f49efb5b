import { formatNumber } from '../../../core/figures/format.ts'
import type { FrameBalance } from '../../../core/balance/frameBalance.ts'
import { trueMinus } from '../../show.ts'
import { useAppState } from '../../appContext.ts'
import { Facts } from '../Facts.tsx'
import { Section } from '../Section.tsx'
import { useAircraft } from '../useAircraft.ts'
import { useReport } from '../useReport.ts'
import { tenthG } from '../words.ts'
import { BalanceDrawing } from './BalanceDrawing.tsx'
import { PlaceFields } from './PlaceFields.tsx'
import { WingBalanceBlock } from './WingBalanceBlock.tsx'

/** Where things sit, and where that puts the centre of gravity. */
export function BalanceSection() {
  const { aircraft } = useAircraft()
  const placed = aircraft.items.filter(({ positionMm }) => positionMm !== null).length
  const pieces = aircraft.places.length
  return (
    <Section
      title="Balance"
      summary={
        pieces + placed === 0
          ? 'nothing has a place yet'
          : `${pieces} printed ${pieces === 1 ? 'piece' : 'pieces'}, ${placed} ${placed === 1 ? 'item' : 'items'} placed`
      }
    >
      {() => <BalanceBody />}
    </Section>
  )
}

function BalanceBody() {
  const { aircraft } = useAircraft()
  const parts = useAppState((state) => state.frame.parts)
  const { report, shapes } = useReport()
  const { balance } = report
  return (
    <>
      <div className="craft-side">
        <PlaceFields places={aircraft.places} parts={parts} />
        <p className="hint">
          Bought items get a place where they are listed. Motors and propellers without one sit on
          the motor circle.
        </p>
      </div>
      <div className="craft-main">
        {shapes.pending > 0 ? (
          <p className="hint" role="status">
            Looking at {shapes.pending} {shapes.pending === 1 ? 'mesh' : 'meshes'}…
          </p>
        ) : null}
        {shapes.failed.length > 0 ? (
          <p className="caution">No mesh to look at, so left out: {shapes.failed.join(', ')}.</p>
        ) : null}
        {balance === null ? (
          <p className="hint">
            Give parts and heavy items a place, and the centre of gravity is worked out from the
            meshes themselves.
          </p>
        ) : (
          <>
            <BalanceDrawing
              balance={balance}
              flight={aircraft.wing === null ? aircraft.flight : null}
            />
            <BalanceFacts balance={balance} hasThrustCentre={aircraft.wing === null} />
          </>
        )}
        {aircraft.wing === null ? null : (
          <WingBalanceBlock wing={aircraft.wing} balance={balance} items={aircraft.items} />
        )}
      </div>
    </>
  )
}

interface BalanceFactsProps {
  readonly balance: FrameBalance
  readonly hasThrustCentre: boolean
}

function BalanceFacts({ balance, hasThrustCentre }: BalanceFactsProps) {
  const [x, y, z] = balance.cgMm
  const [forward, left] = balance.offsetMm
  const inertia = balance.inertiaKgM2.map((value) => formatNumber(value * 1000))
  return (
    <>
      <Facts
        of={[
          { words: 'Mass that has a place', figure: `${tenthG(balance.massG)} g` },
          {
            words: 'Centre of gravity',
            figure: [
              sideWords(x, 'forward', 'aft'),
              sideWords(y, 'left', 'right'),
              sideWords(z, 'up', 'down'),
            ].join(', '),
            strong: true,
          },
          ...(hasThrustCentre
            ? [
                {
                  words: 'From the middle of the motors',
                  figure: `${formatNumber(Math.hypot(forward, left), undefined, 1)} mm`,
                },
              ]
            : []),
          {
            words: 'Moment of inertia, roll · pitch · yaw',
            figure: `${inertia.join(' · ')} g·m²`,
          },
        ]}
      />
      {balance.onMotors.length > 0 ? (
        <p className="hint">On the motor circle: {balance.onMotors.join(', ')}.</p>
      ) : null}
      {balance.unplaced.length > 0 ? (
        <p className="caution">
          {tenthG(balance.unplacedG)} g have no place yet and are left out:{' '}
          {balance.unplaced.join(', ')}. Hang the finished aircraft up and check where it balances.
        </p>
      ) : null}
    </>
  )
}

/** "3.2 mm forward"; "0 mm" where it is neither. */
function sideWords(mm: number, more: string, less: string): string {
  const size = trueMinus(formatNumber(Math.abs(mm), undefined, 1))
  if (size === '0') return `0 mm ${more}`
  return `${size} mm ${mm > 0 ? more : less}`
}
