import { Checkbox } from 'react-aria-components'
import { useShallow } from 'zustand/react/shallow'
import type { Setting } from '../../../core/choose/variety.ts'
import { materialsOf } from '../../../state/store/materialOf.ts'
import { useAppState } from '../../appContext.ts'
import { toggled, type Asked } from './asked.ts'

const SETTINGS: readonly (readonly [Setting, string])[] = [
  ['walls', 'Walls'],
  ['infill', 'Infill'],
  ['skins', 'Skins'],
  ['layer', 'Layer height'],
]

interface PartTicksProps {
  readonly asked: Asked
  readonly onChange: (asked: Asked) => void
}

/** Which settings, plastics and parts a search may change. */
export function PartTicks({ asked, onChange }: PartTicksProps) {
  const parts = useAppState((state) => state.frame.parts)
  const materials = useAppState(useShallow((state) => materialsOf(state.frame)))
  const { settings, materialIds, locked, free } = asked
  return (
    <div className="find-ticks">
      <fieldset>
        <legend>May change</legend>
        {SETTINGS.map(([setting, name]) => (
          <Tick
            key={setting}
            name={name}
            isOn={settings.has(setting)}
            onChange={(isOn) => {
              onChange({ ...asked, settings: toggled(settings, setting, isOn) })
            }}
          />
        ))}
      </fieldset>
      <details>
        <summary>
          Plastics: {materialIds.length === 0 ? 'as they are' : `${materialIds.length} more`}
        </summary>
        <fieldset>
          <legend className="unseen">Plastics that may be taken besides</legend>
          {materials.map(({ id, name }) => (
            <Tick
              key={id}
              name={name}
              isOn={materialIds.includes(id)}
              onChange={(isOn) => {
                onChange({ ...asked, materialIds: [...toggled(new Set(materialIds), id, isOn)] })
              }}
            />
          ))}
        </fieldset>
      </details>
      <details>
        <summary>{partsWords(parts.length, locked.size, free.size)}</summary>
        <table className="choose-table find-parts">
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col">May change</th>
              <th scope="col">Stiffness counts</th>
            </tr>
          </thead>
          <tbody>
            {parts.map(({ id, name }) => (
              <tr key={id}>
                <th scope="row">{name}</th>
                <td>
                  <Tick
                    name={`${name} may change`}
                    isBare
                    isOn={!locked.has(id)}
                    onChange={(isOn) => {
                      onChange({ ...asked, locked: toggled(locked, id, !isOn) })
                    }}
                  />
                </td>
                <td>
                  <Tick
                    name={`Stiffness of ${name} counts`}
                    isBare
                    isOn={!free.has(id)}
                    onChange={(isOn) => {
                      onChange({ ...asked, free: toggled(free, id, !isOn) })
                    }}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </div>
  )
}

function partsWords(all: number, locked: number, free: number): string {
  const words = [locked === 0 ? `Parts: all ${all} may change` : `Parts: ${locked} of ${all} stay`]
  if (free > 0) words.push(`stiffness of ${free} free`)
  return words.join(', ')
}

interface TickProps {
  readonly name: string
  readonly isOn: boolean
  readonly onChange: (isOn: boolean) => void
  readonly isBare?: boolean
}

function Tick({ name, isOn, onChange, isBare = false }: TickProps) {
  return (
    <Checkbox
      className="tick tick-line"
      isSelected={isOn}
      onChange={onChange}
      {...(isBare ? { 'aria-label': name } : {})}
    >
      <span className="tick-box" />
      {isBare ? null : name}
    </Checkbox>
  )
}
