import type { Part } from '../../core/model/frame.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'

/** How many fly, how many of those are mirrored, how many lie in the spares box. */
export function CountFields({ part, write }: { readonly part: Part; readonly write: PartEdit }) {
  return (
    <>
      <NumberBox
        label="On the frame"
        value={part.quantity}
        min={0}
        max={999}
        step={1}
        digits={0}
        unit="pieces"
        onChange={(quantity) => {
          write.edit({ quantity, mirrored: Math.min(part.mirrored, quantity) })
        }}
      />
      <NumberBox
        label="Of those mirrored"
        value={part.mirrored}
        min={0}
        max={part.quantity}
        step={1}
        digits={0}
        unit="pieces"
        onChange={(mirrored) => {
          write.edit({ mirrored })
        }}
      />
      <NumberBox
        label="Spares"
        value={part.spares}
        min={0}
        max={999}
        step={1}
        digits={0}
        unit="pieces"
        onChange={(spares) => {
          write.edit({ spares })
        }}
      />
    </>
  )
}
