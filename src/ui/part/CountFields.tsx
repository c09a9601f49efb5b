import type { Part } from '../../core/model/frame.ts'
import { PIECES_LIMITS, narrowed } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'

/** How many fly, how many of those are mirrored, how many lie in the spares box. */
export function CountFields({ part, write }: { readonly part: Part; readonly write: PartEdit }) {
  return (
    <>
      <NumberBox
        label="On the frame"
        limits={PIECES_LIMITS.quantity}
        value={part.quantity}
        step={1}
        unit="pieces"
        onChange={(quantity) => {
          write.edit({ quantity, mirrored: Math.min(part.mirrored, quantity) })
        }}
      />
      <NumberBox
        label="Of those mirrored"
        limits={narrowed(PIECES_LIMITS.spares, { max: part.quantity })}
        value={part.mirrored}
        step={1}
        unit="pieces"
        onChange={(mirrored) => {
          write.edit({ mirrored })
        }}
      />
      <NumberBox
        label="Spares"
        limits={PIECES_LIMITS.spares}
        value={part.spares}
        step={1}
        unit="pieces"
        onChange={(spares) => {
          write.edit({ spares })
        }}
      />
    </>
  )
}
