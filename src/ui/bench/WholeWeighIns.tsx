import { useState } from 'react'
import { Button } from 'react-aria-components'
import { calculatedWholeG } from '../../core/frame/frameReadings.ts'
import type { FrameSum } from '../../core/frame/types.ts'
import type { WholeWeighing } from '../../core/model/readings.ts'
import { fateWords, strayMassWords } from '../../core/words/learned.ts'
import { useActions, useAppState } from '../appContext.ts'
import { narrowed, READING_LIMITS } from '../../core/data/limits.ts'
import { dayOf } from '../../core/words/day.ts'
import { Choice } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import { tenthMass } from '../aircraft/words.ts'
import type { Scale } from './ScaleFields.tsx'
import { leastOnScale } from './leastOnScale.ts'

const WHOLES = [
  { id: 'printed', name: 'All printed parts' },
  { id: 'all-up', name: 'The whole aircraft' },
] as const

/** All printed parts, or the whole aircraft, on the scale at once. */
export function WholeWeighIns({ sum, scale }: { readonly sum: FrameSum; readonly scale: Scale }) {
  const wholes = useAppState((state) => state.frame.wholes) ?? NONE
  const { putReadings } = useActions()
  const [of, setOf] = useState<WholeWeighing['of']>('printed')
  const leastG = leastOnScale(scale)
  const put = (next: readonly WholeWeighing[]) => {
    putReadings({ wholes: next }, 'weigh the whole')
  }
  const calculatedG = calculatedWholeG(of, sum.doubt.parts, sum.doubt.items)
  const add = (scaleG: number) => {
    const date = dayOf(new Date())
    const whole = {
      id: `whole-${Date.now()}`,
      of,
      scaleG,
      ...scale,
      date,
      calculatedG,
      trusted: false,
    }
    put([...wholes, whole])
  }
  return (
    <>
      <div className="weigh-scale">
        <Choice label="On the scale at once" options={WHOLES} value={of} onChange={setOf} />
        <NumberBox
          label="It shows"
          limits={narrowed(READING_LIMITS.scaleG, { min: leastG })}
          value={null}
          step={scale.stepG}
          unit="g"
          hint="Spares left in the bag. Type it in once all is on."
          onChange={add}
          onEmpty={() => undefined}
        />
      </div>
      <ul className="learned-list">
        {wholes.map((whole) => {
          const stray = sum.strays.find(({ id }) => id === whole.id)
          const told = sum.readings.find(({ id }) => id === whole.id)
          const name = WHOLES.find(({ id }) => id === whole.of)?.name ?? ''
          return (
            <li key={whole.id}>
              {name}: {tenthMass(whole.scaleG - whole.tareG)}
              {whole.date === null ? '' : `, ${whole.date}`}
              {told === undefined ? '' : `, ${fateWords(told.fate, told.ratio)}`}{' '}
              <Button
                className="quiet"
                onPress={() => {
                  put(wholes.filter(({ id }) => id !== whole.id))
                }}
              >
                Forget
              </Button>
              {stray === undefined ? null : (
                <span className="caution">
                  {strayMassWords(name, stray.value, stray.foretold, stray.taken)}{' '}
                  <Button
                    className="quiet"
                    onPress={() => {
                      put(wholes.map((one) => (one === whole ? { ...one, trusted: true } : one)))
                    }}
                  >
                    I stand by it
                  </Button>
                </span>
              )}
            </li>
          )
        })}
      </ul>
    </>
  )
}

const NONE: readonly WholeWeighing[] = []
