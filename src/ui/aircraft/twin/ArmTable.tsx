import type { Range } from '../../../core/model/figures.ts'
import type { ArmShake } from '../../../core/aircraft/twin/armShake.ts'
import { useAppState, useReadState } from '../../appContext.ts'
import { TWIN_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { usePutAircraft } from '../useAircraft.ts'
import { figureWords, spanWords, measureWords } from '../words.ts'
import { lengthUnit } from '../../../core/words/shownUnits.ts'

interface ArmTableProps {
  readonly arms: readonly ArmShake[]
}

/** Whether the arms ring where the propellers shake them, printed and cut from plate. */
export function ArmTable({ arms }: ArmTableProps) {
  const [first] = arms
  if (first === undefined) return null
  const atTurn = ringing(arms, 'turn')
  const atPass = ringing(arms, 'pass')
  return (
    <>
      <h4>Do the arms ring</h4>
      <table className="sides">
        <caption className="unseen">First tone of the arms</caption>
        <thead>
          <tr>
            <th scope="col">Arm</th>
            <th scope="col" className="figures">
              Printed <small>Hz</small>
            </th>
            <th scope="col" className="figures">
              Cut <small>Hz</small>
            </th>
            <th scope="col" className="twin-choice-head">
              Free length <small>{lengthUnit()}</small>
            </th>
          </tr>
        </thead>
        <tbody>
          {arms.map((arm) => (
            <tr key={arm.partId}>
              <th scope="row">{arm.name}</th>
              <HzCell hz={arm.printedHz} />
              <HzCell hz={arm.plateHz} />
              <td className="twin-choice">
                <FreeLength arm={arm} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={atTurn.length + atPass.length > 0 ? 'caution' : 'hint'}>
        In hover a propeller turns {spanWords(first.turnHz, 'times a second', 0)}; its{' '}
        {BLADE_WORDS[first.blades]} blades pass {spanWords(first.passHz, 'times', 0)}.{' '}
        {atTurn.length > 0
          ? `May ring with the turns, which a balanced propeller quietens: ${atTurn.join(', ')}. `
          : ''}
        {atPass.length > 0
          ? `May ring with the passing blades, which balancing does not help: ${atPass.join(', ')}. `
          : ''}
        {atTurn.length + atPass.length > 0
          ? 'Expect shake in the picture: a stiffer, shorter or softer-mounted arm moves it away.'
          : 'No arm’s first bending lies within 15 % of either; throttling still passes through.'}
      </p>
      <p className="hint">
        Held firmly, {measureWords(first.tipG, 'g', 0)} of motor and propeller at the end: printed
        by the solid model that the part’s sheet shows, or as a beam where a length is typed; cut
        the same with the plate’s stiffness, ±20 %. Clamps soften it. Tap a finished arm and listen
        before you trust this.
      </p>
    </>
  )
}

const BLADE_WORDS = { 2: 'two', 3: 'three', 4: 'four' } as const

/** Names of what may ring, printed or cut. */
function ringing(arms: readonly ArmShake[], at: 'turn' | 'pass'): readonly string[] {
  return arms.flatMap(({ name, printedRings, cutRings }) => [
    ...(printedRings[at] ? [`${name} printed`] : []),
    ...(cutRings[at] ? [`${name} cut`] : []),
  ])
}

function HzCell({ hz }: { readonly hz: Range }) {
  return (
    <td className="figures">
      {figureWords(hz.mid, 0)}
      <span className="range">{spanWords(hz, 'Hz', 0)}</span>
    </td>
  )
}

function FreeLength({ arm: { partId, name, freeMm, typed, by } }: { readonly arm: ArmShake }) {
  const typedMm = useAppState((state) => state.frame.aircraft.twin.freeMm?.[partId])
  const read = useReadState()
  const putAircraft = usePutAircraft()
  return (
    <>
      <NumberBox
        label={`Free length of ${name}`}
        bare
        limits={TWIN_LIMITS.freeMm}
        value={typedMm ?? Number(freeMm.toFixed(1))}
        step={1}
        digits={1}
        unit="mm"
        onChange={(mm) => {
          const setup = read().frame.aircraft.twin
          putAircraft(
            { twin: { ...setup, freeMm: { ...setup.freeMm, [partId]: mm } } },
            'change the free length of an arm',
          )
        }}
      />
      {typed ? null : (
        <span className="range">
          {by === 'solid' ? 'solved; type one for a beam' : 'a guess: 85 % of it'}
        </span>
      )}
    </>
  )
}
