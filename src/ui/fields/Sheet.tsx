import '../styles/late.css'
import type { ReactNode } from 'react'
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'

interface SheetProps {
  readonly title: string
  readonly isOpen: boolean
  readonly onClose: () => void
  readonly children: ReactNode
  readonly wide?: boolean
}

/** A sheet laid over the ledger; Escape, the close button or a press beside it puts it away. */
export function Sheet({ title, isOpen, onClose, children, wide = false }: SheetProps) {
  return (
    <ModalOverlay
      className="sheet-ground"
      isDismissable
      isOpen={isOpen}
      onOpenChange={(open) => {
        if (!open) onClose()
      }}
    >
      <Modal className={wide ? 'sheet sheet-wide' : 'sheet'}>
        <Dialog className="sheet-body">
          <header className="sheet-head">
            <Heading slot="title">{title}</Heading>
            <Button className="quiet" onPress={onClose}>
              Close
            </Button>
          </header>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
