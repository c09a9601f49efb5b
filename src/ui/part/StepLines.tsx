import { Button } from 'react-aria-components'
import { formatMoney, withSign } from '../../core/words/format.ts'
import { useAppState } from '../appContext.ts'
import { showGhost } from '../head/ghost.ts'
import type { Gives } from '../../core/choose/gives/types.ts'
import { showMass, trueMinus } from '../show.ts'
import { giveWords, toneWords } from './stiffness/BeamLine.tsx'
import type { StepEffect } from './useSteps.ts'
import type { PartEdit } from './usePartEdit.ts'

interface StepLinesProps {
  /** Of one setting. */
  readonly effects: readonly StepEffect[]
  readonly write: PartEdit
  /** Name of the setting, for those who hear it. */
  readonly of: string
  /** How the part would then give; left out where no beam tells it. */
  readonly givesOf?: (effect: StepEffect) => Gives | null
}

/** What one step of a setting would do to the frame; pressed, it is made. */
export function StepLines({ effects, write, of, givesOf }: StepLinesProps) {
  const currency = useAppState((state) => state.frame.prices.currency)
  return (
    <ul className="steps">
      {effects.map((effect) => {
        const { step, massG, timeS, cost, frameG } = effect
        const gives = givesOf?.(effect) ?? null
        const ghost = { massG: frameG, words: `${of} ${step.words}` }
        return (
          <li key={step.words}>
            <Button
              className="step"
              onHoverStart={() => {
                showGhost(ghost)
              }}
              onHoverEnd={() => {
                showGhost(null)
              }}
              onFocus={() => {
                showGhost(ghost)
              }}
              onBlur={() => {
                showGhost(null)
              }}
              onPress={() => {
                showGhost(null)
                write.edit({
                  recipe: step.recipe,
                  ...(step.material === undefined ? {} : { materialId: step.material.id }),
                })
              }}
            >
              <span className="step-words">
                <span className="unseen">{of}, </span>
                {step.words}
              </span>
              <b>{withSign(massG, showMass(massG))}</b>
              <span>{minutes(timeS)}</span>
              <span>{trueMinus(withSign(cost, formatMoney(cost, currency)))}</span>
              {gives === null ? null : (
                <span className="step-gives">
                  {giveWords(gives)}
                  {gives.firstHz === null ? '' : `, ${toneWords(gives.firstHz)}`}
                </span>
              )}
            </Button>
          </li>
        )
      })}
    </ul>
  )
}

function minutes(timeS: number): string {
  const whole = Math.round(timeS / 60)
  return `${trueMinus(withSign(whole, String(whole)))} min`
}
