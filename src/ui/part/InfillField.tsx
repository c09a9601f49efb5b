import { Label, Slider, SliderThumb, SliderTrack } from 'react-aria-components'
import { RECIPE_LIMITS } from '../../core/data/limits.ts'
import { HelpMark } from '../help/HelpMark.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import { FINEST } from '../fields/shownNumber.ts'
import type { PartEdit } from './usePartEdit.ts'

const AS_TYPED = { maximumFractionDigits: FINEST }

export interface InfillFieldProps {
  readonly infillPct: number
  readonly write: PartEdit
  /**
   * What ten points of infill are worth on this part, in words; null until its layers are counted.
   */
  readonly worth: string | null
}

/**
 * Infill by slider and by number. While the slider is dragged the row and the frame total follow.
 */
export function InfillField({ infillPct, write, worth }: InfillFieldProps) {
  return (
    <div className="infill-field">
      <Slider
        className="slider"
        value={infillPct}
        minValue={RECIPE_LIMITS.infillPct.min}
        maxValue={RECIPE_LIMITS.infillPct.max}
        // It tells a share between two whole ones as the box beside it does, and leaves it for the
        // next whole one.
        step={Number.isInteger(infillPct) ? 1 : 10 ** -FINEST}
        formatOptions={AS_TYPED}
        onChange={(value) => {
          const whole = value > infillPct ? Math.ceil(value) : Math.floor(value)
          write.drag({ recipe: { infillPct: whole } })
        }}
        onChangeEnd={write.settle}
      >
        <span className="field-name">
          <Label>Infill</Label>
          <HelpMark of="infill" />
        </span>
        <SliderTrack className="slider-track">
          <span className="slider-fill" style={{ width: `${infillPct}%` }} />
          <SliderThumb className="slider-thumb" />
        </SliderTrack>
      </Slider>
      <NumberBox
        label="Infill share"
        bare
        limits={RECIPE_LIMITS.infillPct}
        value={infillPct}
        step={1}
        digits={1}
        unit="%"
        onChange={(value) => {
          write.edit({ recipe: { infillPct: value } })
        }}
      />
      {worth === null ? null : <p className="hint infill-worth">{worth}</p>}
    </div>
  )
}
