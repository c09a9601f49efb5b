import { useState } from 'react'
import { Button } from 'react-aria-components'
import { useShallow } from 'zustand/react/shallow'
import type { Material } from '../../core/model/figures.ts'
import { materialsOf } from '../../state/store/materialOf.ts'
import { newId } from '../../state/store/newId.ts'
import { useAppState } from '../appContext.ts'
import { Sheet } from '../fields/Sheet.tsx'
import { MineLine } from '../workshop/MineLine.tsx'
import { MaterialForm } from './MaterialForm.tsx'
import { MaterialTable } from './MaterialTable.tsx'

interface MaterialsSheetProps {
  readonly isOpen: boolean
  readonly onClose: () => void
}

/** Every material with where its numbers come from; any of them can be typed over. */
export function MaterialsSheet({ isOpen, onClose }: MaterialsSheetProps) {
  const materials = useAppState(useShallow((state) => materialsOf(state.frame)))
  const currency = useAppState((state) => state.frame.prices.currency)
  const [editedId, setEditedId] = useState<string | null>(null)
  // Of the frame only once its figures are kept.
  const [fresh, setFresh] = useState<Material | null>(null)
  const edited = fresh ?? materials.find(({ id }) => id === editedId) ?? null
  const leave = () => {
    setEditedId(null)
    setFresh(null)
  }
  const close = () => {
    leave()
    onClose()
  }
  const add = () => {
    const [first] = materials
    if (first === undefined) return
    setFresh(copyAsOwn(first, `Own material ${materials.length + 1}`))
  }
  return (
    <Sheet title="Materials" wide isOpen={isOpen} onClose={close}>
      <MineLine kind="materials" />
      <p className="hint">
        The density on the spool’s label, or the one you weighed, narrows every range on the page.
        The letter beside a number tells where it comes from: r read, d derived, w a weak source, m
        from memory, c common practice. Point at it or tab to it for the source itself.
      </p>
      {edited === null ? null : (
        <MaterialForm key={edited.id} material={edited} currency={currency} onDone={leave} />
      )}
      <MaterialTable
        materials={materials}
        currency={currency}
        editedId={editedId}
        onEdit={(id) => {
          setFresh(null)
          setEditedId(id)
        }}
      />
      <div className="button-line">
        <Button className="quiet" onPress={add}>
          Add a material
        </Button>
      </div>
    </Sheet>
  )
}

function copyAsOwn(material: Material, name: string): Material {
  return { ...material, id: `own-${newId()}`, name, densityTyped: false }
}
