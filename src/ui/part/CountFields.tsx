import { memo } from 'react'
import type { Part } from '../../core/model/frame.ts'
import { PIECES_LIMITS, narrowed } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'

interface CountFieldsProps extends Pick<Part, 'quantity' | 'mirrored' | 'spares'> {
  readonly write: PartEdit
}

/** How many fly, how many of those are mirrored, how many lie in the spares box. */
export const CountFields = memo(function CountFields(props: CountFieldsProps) {
  const { quantity: flying, mirrored: turned, spares: kept, write } = props
  return (
    <>
      <NumberBox
        label="On the frame"
        limits={PIECES_LIMITS.quantity}
        value={flying}
        step={1}
        unit="pieces"
        onChange={(quantity) => {
          write.edit({ quantity, mirrored: Math.min(turned, quantity) })
        }}
      />
      <NumberBox
        label="Of those mirrored"
        limits={narrowed(PIECES_LIMITS.spares, { max: flying })}
        value={turned}
        step={1}
        unit="pieces"
        onChange={(mirrored) => {
          write.edit({ mirrored })
        }}
      />
      <NumberBox
        label="Spares"
        limits={PIECES_LIMITS.spares}
        value={kept}
        step={1}
        unit="pieces"
        onChange={(spares) => {
          write.edit({ spares })
        }}
      />
    </>
  )
})
