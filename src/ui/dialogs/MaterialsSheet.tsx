import { useRef, useState } from 'react'
import { Button } from 'react-aria-components'
import { useShallow } from 'zustand/react/shallow'
import type { Material } from '../../core/model/figures.ts'
import { materialsOf } from '../../state/store/materialOf.ts'
import { newId } from '../../state/store/newId.ts'
import { useActions, useAppState } from '../appContext.ts'
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
  const { tell } = useActions()
  const materials = useAppState(useShallow((state) => materialsOf(state.frame)))
  const currency = useAppState((state) => state.frame.prices.currency)
  const [editedId, setEditedId] = useState<string | null>(null)
  // Of the frame only once its figures are kept.
  const [fresh, setFresh] = useState<Material | null>(null)
  const edited = fresh ?? materials.find(({ id }) => id === editedId) ?? null
  const isTyped = useRef(false)
  const leave = () => {
    setEditedId(null)
    setFresh(null)
    isTyped.current = false
  }
  // Neither kept nor left by its own buttons.
  const drop = () => {
    if (edited !== null && (fresh !== null || isTyped.current)) {
      tell(`What was typed for “${edited.name}” was not kept.`)
    }
    leave()
  }
  const close = () => {
    drop()
    onClose()
  }
  const add = () => {
    const [first] = materials
    if (first === undefined) return
    drop()
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
        <MaterialForm
          key={edited.id}
          material={edited}
          currency={currency}
          onType={() => {
            isTyped.current = true
          }}
          onDone={leave}
        />
      )}
      <MaterialTable
        materials={materials}
        currency={currency}
        editedId={editedId}
        onEdit={(id) => {
          if (id === edited?.id) return
          drop()
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
