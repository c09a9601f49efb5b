import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import { loadOf } from '../../../core/aircraft/twin/loadOf.ts'
import { clearOfTurnsHz } from '../../../core/aircraft/report/clearOfTurns.ts'
import { FIND_LIMITS } from '../../../core/data/limits.ts'
import { frameSum } from '../../../state/store/derived.ts'
import { useAppState } from '../../appContext.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { useKeptLoads } from '../../part/stiffness/keptLoads.ts'
import { showNumber } from '../../show.ts'
import { limited, type Asked } from './asked.ts'

interface GivesFieldsProps {
  readonly asked: Asked
  readonly onChange: (asked: Asked) => void
}

/**
 * How far each part may give under its load and how high it must ring; empty fields ask nothing.
 */
export function GivesFields({ asked, onChange }: GivesFieldsProps) {
  const parts = useAppState((state) => state.frame.parts)
  const aircraft = useAppState((state) => state.frame.aircraft)
  const auwG = useAppState((state) => frameSum(state).allUpG.mid)
  const typed = useKeptLoads()
  const { gives } = asked
  const arms = useMemo(() => parts.filter(({ role }) => role === 'arm'), [parts])
  const turnsHz = clearOfTurnsHz(aircraft, auwG)
  const names = parts.filter(({ id }) => gives.has(id)).map(({ name }) => name)
  return (
    <details className="find-gives">
      <summary>How parts give: {names.length === 0 ? 'nothing asked' : names.join(', ')}</summary>
      {turnsHz === null || arms.length === 0 ? null : (
        <p className="hint">
          <Button
            className="quiet"
            onPress={() => {
              const hz = Math.ceil(turnsHz)
              onChange({
                ...asked,
                gives: arms.reduce((all, { id }) => limited(all, id, 'firstHz', hz), gives),
              })
            }}
          >
            Arms above their propellers’ turns
          </Button>{' '}
          In hover they turn at up to {showNumber(turnsHz, 0)} times a second, 15 % added.
        </p>
      )}
      <div className="wide-table">
        <table className="choose-table find-parts">
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col">Load</th>
              <th scope="col">Gives at most</th>
              <th scope="col">Rings at least</th>
            </tr>
          </thead>
          <tbody>
            {parts.map((part) => {
              const { id, name } = part
              const own = gives.get(id)
              const put = (limit: 'deflectionMm' | 'firstHz', value: number | null) => {
                onChange({ ...asked, gives: limited(gives, id, limit, value) })
              }
              return (
                <tr key={id}>
                  <th scope="row">{name}</th>
                  <td>{showNumber(loadOf(part, aircraft, typed.get(id)).loadN, 1)} N</td>
                  <td>
                    <NumberBox
                      label={`${name} gives at most`}
                      bare
                      limits={FIND_LIMITS.deflectionMm}
                      value={own?.deflectionMm ?? null}
                      unit="mm"
                      digits={3}
                      onChange={(value) => put('deflectionMm', value)}
                      onEmpty={() => put('deflectionMm', null)}
                    />
                  </td>
                  <td>
                    <NumberBox
                      label={`${name} rings at least`}
                      bare
                      limits={FIND_LIMITS.firstHz}
                      value={own?.firstHz ?? null}
                      unit="Hz"
                      digits={1}
                      onChange={(value) => put('firstHz', value)}
                      onEmpty={() => put('firstHz', null)}
                    />
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      <p className="hint">
        Held and pushed as on the part’s own sheet, where the load is typed. The part as it stands
        is solved as a solid; its other ways follow by its sections where it is slender, else each
        is solved too, some seconds a way. Middles are asked for: a deflection is good to a quarter,
        a tone to an eighth.
      </p>
    </details>
  )
}
