import { Button } from 'react-aria-components'
import type { UnitSuggestion } from '../../core/mesh/holes/suggestUnit.ts'
import type { Part } from '../../core/model/frame.ts'
import { UNIT_PLURAL } from '../../core/model/units.ts'
import { useActions, useAppState } from '../appContext.ts'
import { toldWords } from '../../core/words/toldWords.ts'

interface UnitHintProps {
  readonly part: Part
  readonly hint: UnitSuggestion
}

/**
 * Offers the unit a file was more likely drawn in: for this part, and for all that were dropped
 * with it.
 */
export function UnitHint({ part, hint }: UnitHintProps) {
  const { updateParts } = useActions()
  const dropOf = useAppState((state) => state.dropOf)
  const parts = useAppState((state) => state.frame.parts)
  const drop = dropOf[part.id]
  const together = parts.filter(
    ({ id, unit }) => drop !== undefined && dropOf[id] === drop && unit !== hint.unit,
  )
  const unit = UNIT_PLURAL[hint.unit]
  const { also } = hint
  return (
    <div className="offer">
      <p className="hint">{toldWords(hint.reason)}</p>
      <Button
        className="quiet"
        onPress={() => {
          updateParts([part.id], { unit: hint.unit })
        }}
      >
        Take it as {unit}
      </Button>
      {also === undefined ? null : (
        <Button
          className="quiet"
          onPress={() => {
            updateParts([part.id], { unit: also })
          }}
        >
          Take it as {UNIT_PLURAL[also]}
        </Button>
      )}
      {together.length > 1 ? (
        <Button
          className="quiet"
          onPress={() => {
            updateParts(
              together.map(({ id }) => id),
              { unit: hint.unit },
            )
          }}
        >
          Take all {together.length} files dropped together as {unit}
        </Button>
      ) : null}
    </div>
  )
}
