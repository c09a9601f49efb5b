import { lazy, Suspense } from 'react'
import { Sheet } from '../fields/Sheet.tsx'

/** Some 40 kB of legal text: loaded when someone asks for it. */
const LicenceList = lazy(() => import('./LicenceList.tsx'))

interface LicencesSheetProps {
  readonly isOpen: boolean
  readonly onClose: () => void
}

export function LicencesSheet({ isOpen, onClose }: LicencesSheetProps) {
  return (
    <Sheet title="Licences" isOpen={isOpen} onClose={onClose}>
      <Suspense fallback={<p className="hint">Fetching the licences…</p>}>
        <LicenceList />
      </Suspense>
    </Sheet>
  )
}
