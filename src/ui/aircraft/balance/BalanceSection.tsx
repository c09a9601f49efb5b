import { memo, useMemo } from 'react'
import { balanceReport } from '../../../core/aircraft/report/balanceReport.ts'
import { boughtAircraft } from '../../../state/store/derived.ts'
import { useAppState } from '../../appContext.ts'
import { useFramePlaces } from '../../useFramePlaces.ts'
import type { FrameBalance } from '../../../core/aircraft/balance/frameBalance.ts'
import { FigureList } from '../FigureList.tsx'
import { Section } from '../Section.tsx'
import { useShownAircraft } from '../ShownAircraft.tsx'
import { useReportParts } from '../useReportParts.ts'
import { figureWords, tenthMass, measureWords } from '../words.ts'
import { BalanceDrawing } from './BalanceDrawing.tsx'
import { JointFindings } from './JointFindings.tsx'
import { PlaceFields } from './PlaceFields.tsx'
import { WingBalanceBlock } from './WingBalanceBlock.tsx'

/** Where things sit, and where that puts the centre of gravity. */
export function BalanceSection() {
  const placed = useAppState(boughtAircraft).items.filter(
    ({ positionMm }) => positionMm !== null,
  ).length
  const pieces = useFramePlaces().places.length
  return (
    <Section
      title="Balance"
      summary={
        pieces + placed === 0
          ? 'nothing has a place yet'
          : `${pieces} printed ${pieces === 1 ? 'piece' : 'pieces'}, ` +
            `${placed} ${placed === 1 ? 'item' : 'items'} placed`
      }
    >
      <BalanceBody />
    </Section>
  )
}

const BalanceBody = memo(function BalanceBody() {
  const { aircraft, view } = useShownAircraft()
  const items = view.doubt.countedItems
  const { parts, shapes } = useReportParts()
  const balance = useMemo(
    () => (parts === null ? null : balanceReport(parts, aircraft, items)),
    [parts, aircraft, items],
  )
  return (
    <>
      <div className="craft-side">
        <PlaceFields />
        <p className="hint">
          Bought items get a place where they are listed, screws of joints have theirs. Motors and
          propellers without one sit on the motor circle.
        </p>
      </div>
      <div className="craft-main">
        {parts === null ? null : <JointFindings parts={parts} aircraft={aircraft} />}
        {shapes.pending > 0 ? (
          <p className="hint" role="status">
            Looking at {shapes.pending} {shapes.pending === 1 ? 'mesh' : 'meshes'}…
          </p>
        ) : null}
        {shapes.failed.length > 0 ? (
          <p className="caution">No mesh to look at, so left out: {shapes.failed.join(', ')}.</p>
        ) : null}
        {parts !== null && balance === null ? (
          <p className="hint">
            Give parts and heavy items a place, and the centre of gravity is worked out from the
            meshes themselves.
          </p>
        ) : null}
        {balance === null ? null : (
          <>
            <BalanceDrawing
              balance={balance}
              flight={aircraft.wing === null ? aircraft.flight : null}
            />
            <BalanceFigures balance={balance} hasThrustCentre={aircraft.wing === null} />
          </>
        )}
        {aircraft.wing === null ? null : (
          <WingBalanceBlock wing={aircraft.wing} balance={balance} items={items} />
        )}
      </div>
    </>
  )
})

interface BalanceFiguresProps {
  readonly balance: FrameBalance
  readonly hasThrustCentre: boolean
}

function BalanceFigures({ balance, hasThrustCentre }: BalanceFiguresProps) {
  const [x, y, z] = balance.cgMm
  const [forward, left] = balance.offsetMm
  const [roll, pitch, yaw] = balance.inertiaKgM2.map((value) => figureWords(value * 1000, 2))
  return (
    <>
      <FigureList
        of={[
          { words: 'Mass that has a place', figure: tenthMass(balance.massG) },
          {
            words: 'Centre of gravity, lengthwise',
            ...sideWords(x, 'forward', 'aft'),
            strong: true,
          },
          { words: 'Sideways', ...sideWords(y, 'left', 'right') },
          { words: 'In height', ...sideWords(z, 'up', 'down') },
          ...(hasThrustCentre
            ? [
                {
                  words: 'From the middle of the motors',
                  figure: measureWords(Math.hypot(forward, left), 'mm', 1),
                },
              ]
            : []),
          { words: 'Moment of inertia, roll', help: 'inertia', figure: `${roll} g·m²` },
          { words: 'Moment of inertia, pitch', figure: `${pitch} g·m²` },
          { words: 'Moment of inertia, yaw', figure: `${yaw} g·m²` },
        ]}
      />
      {balance.onMotors.length > 0 ? (
        <p className="hint">On the motor circle: {balance.onMotors.join(', ')}.</p>
      ) : null}
      {balance.unplaced.length > 0 ? (
        <p className="caution">
          {tenthMass(balance.unplacedG)} have no place yet and are left out:{' '}
          {balance.unplaced.join(', ')}. Hang the finished aircraft up and check where it balances.
        </p>
      ) : null}
    </>
  )
}

/** How far from the middle, and to which side; no side where it is in the middle. */
function sideWords(mm: number, more: string, less: string) {
  const figure = measureWords(Math.abs(mm), 'mm', 1)
  if (!/[1-9]/.test(figure)) return { figure }
  return { figure, small: mm > 0 ? more : less }
}
