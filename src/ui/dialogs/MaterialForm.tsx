import { useState } from 'react'
import { Button, Form, Input, Label, TextField } from 'react-aria-components'
import { MATERIALS } from '../../core/data/materials.ts'
import type { Material, Sourced } from '../../core/model/figures.ts'
import { useActions, useAppState } from '../appContext.ts'
import { MATERIAL_LIMITS, TEXT_LIMITS, type Limits } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { TooLong } from '../fields/TooLong.tsx'
import { tooLongWords } from '../fields/tooLongWords.ts'

interface MaterialFormProps {
  readonly material: Material
  readonly currency: string
  /** Something was typed that is not kept yet. */
  readonly onType: () => void
  readonly onDone: () => void
}

/** How far a spool's own density can still be off once it was typed: ±1 %. */
const TYPED_SPREAD = 0.01

interface FigureBox {
  readonly key: {
    [K in keyof Material]-?: Material[K] extends Sourced ? K : never
  }[keyof Material]
  readonly label: string
  readonly limits: Limits
  readonly step: number
  readonly digits?: number
  readonly unit: string
  readonly hint?: string
}

/** What models ask of it. */
const FIGURES: readonly FigureBox[] = [
  {
    key: 'youngsGPa',
    label: 'Stiffness (E)',
    limits: MATERIAL_LIMITS.youngsGPa,
    step: 0.001,
    digits: 3,
    unit: 'GPa',
  },
  {
    key: 'strengthInPlaneMPa',
    label: 'Strength in plane',
    limits: MATERIAL_LIMITS.strengthMPa,
    step: 0.1,
    unit: 'MPa',
  },
  {
    key: 'strengthAcrossMPa',
    label: 'Strength across layers',
    limits: MATERIAL_LIMITS.strengthMPa,
    step: 0.1,
    unit: 'MPa',
  },
  {
    key: 'heatLimitC',
    label: 'Heat limit',
    limits: MATERIAL_LIMITS.heatLimitC,
    step: 1,
    unit: '°C',
  },
  {
    key: 'nozzleC',
    label: 'Nozzle',
    limits: MATERIAL_LIMITS.nozzleC,
    step: 5,
    digits: 1,
    unit: '°C',
  },
  {
    key: 'bedC',
    label: 'Bed',
    limits: MATERIAL_LIMITS.bedC,
    step: 5,
    digits: 1,
    unit: '°C',
    hint: 'Most of the power goes into the bed. 20 where it is not heated.',
  },
]

/** One material in figures. Nothing changes on the page until it is kept. */
export function MaterialForm({ material, currency, onType, onDone }: MaterialFormProps) {
  const { putMaterial, dropMaterial } = useActions()
  const [draft, setDraft] = useState(material)
  const put = (patch: Partial<Material>) => {
    setDraft({ ...draft, ...patch })
    onType()
  }
  const tooLong = tooLongWords(draft.name, TEXT_LIMITS.name)
  const isOwn = useAppState(({ frame }) => frame.materials.some(({ id }) => id === material.id))
  const density = (value: number) => {
    put({
      densityGCm3: typed(value),
      densityTyped: true,
      densityRangeGCm3: [value * (1 - TYPED_SPREAD), value * (1 + TYPED_SPREAD)],
    })
  }
  return (
    <Form
      className="sheet-form"
      aria-label={`Edit ${material.name}`}
      onSubmit={(event) => {
        event.preventDefault()
        if (tooLong !== null || draft.name.trim() === '') return
        putMaterial({ ...draft, name: draft.name.trim() })
        onDone()
      }}
    >
      <TextField
        className="field text-field"
        value={draft.name}
        onChange={(name) => {
          put({ name })
        }}
        isRequired
        isInvalid={tooLong !== null}
      >
        <Label>Name</Label>
        <Input />
        <TooLong words={tooLong} />
      </TextField>
      <NumberBox
        label="Density of your spool"
        limits={MATERIAL_LIMITS.densityGCm3}
        value={draft.densityGCm3.value}
        step={0.001}
        digits={3}
        unit="g/cm³"
        onChange={density}
      />
      <NumberBox
        label="Price of your spool"
        limits={MATERIAL_LIMITS.pricePerKg}
        value={draft.pricePerKg.value}
        step={0.01}
        unit={`${currency}/kg`}
        onChange={(value) => {
          put({ pricePerKg: typed(value) })
        }}
      />
      <NumberBox
        label="Filament diameter"
        limits={MATERIAL_LIMITS.diameterMm}
        value={draft.diameterMm}
        step={0.01}
        unit="mm"
        onChange={(diameterMm) => {
          put({ diameterMm })
        }}
      />
      <NumberBox
        label="Flow"
        limits={MATERIAL_LIMITS.flow}
        value={draft.flow}
        step={0.01}
        unit="of 1"
        hint="1 for plain filament; foaming filament is laid with less and swells to fill the line."
        onChange={(flow) => {
          put({ flow })
        }}
      />
      {FIGURES.map(({ key, limits, ...box }) => (
        <NumberBox
          key={key}
          limits={limits}
          {...box}
          value={draft[key].value}
          onChange={(value) => {
            put({ [key]: typed(value) })
          }}
        />
      ))}
      <div className="button-line to-end">
        {isOwn ? (
          <Button
            className="quiet"
            onPress={() => {
              dropMaterial(material.id)
              onDone()
            }}
          >
            {isBuiltIn(material.id) ? 'Back to the usual figures' : 'Remove this material'}
          </Button>
        ) : null}
        <Button className="quiet" onPress={onDone}>
          Leave as it was
        </Button>
        <Button className="firm" type="submit">
          Keep these figures
        </Button>
      </div>
    </Form>
  )
}

function typed(value: number): Sourced {
  return { value, mark: 'user', source: 'your own figure' }
}

function isBuiltIn(id: string): boolean {
  return MATERIALS.some((each) => each.id === id)
}
