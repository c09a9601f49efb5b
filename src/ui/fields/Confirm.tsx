import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'

interface ConfirmProps {
  readonly title: string
  readonly text: string
  readonly yes: string
  readonly isOpen: boolean
  readonly onYes: () => void
  readonly onNo: () => void
}

/** Asks before work is replaced. */
export function Confirm({ title, text, yes, isOpen, onYes, onNo }: ConfirmProps) {
  return (
    <ModalOverlay
      className="sheet-ground"
      isOpen={isOpen}
      onOpenChange={(open) => {
        if (!open) onNo()
      }}
    >
      <Modal className="sheet sheet-small">
        <Dialog role="alertdialog" className="sheet-body">
          <Heading slot="title">{title}</Heading>
          <p>{text}</p>
          <div className="button-line">
            <Button className="quiet" onPress={onNo} autoFocus>
              Keep it
            </Button>
            <Button className="firm" onPress={onYes}>
              {yes}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
