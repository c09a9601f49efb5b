import { lazy, Suspense, useEffect, useRef, useState } from 'react'
import { useActions, useAppState, useReadState } from '../appContext.ts'
import { PlainButton } from '../fields/PlainButton.tsx'
import { download, useSaveFile } from './download.ts'
import { goTo } from '../set/useAddress.ts'
import type { MenuKey } from './FrameMenuList.tsx'

const FrameMenuList = lazy(async () => {
  const { FrameMenuList: Loaded } = await import('./FrameMenuList.tsx')
  return { default: Loaded }
})

const CalibrationSheet = lazy(async () => {
  const { CalibrationSheet: Loaded } = await import('../calibration/CalibrationSheet.tsx')
  return { default: Loaded }
})

const ProjectsSheet = lazy(async () => {
  const { ProjectsSheet: Loaded } = await import('../projects/ProjectsSheet.tsx')
  return { default: Loaded }
})

const UnitsSheet = lazy(async () => {
  const { UnitsSheet: Loaded } = await import('../dialogs/UnitsSheet.tsx')
  return { default: Loaded }
})

const LicencesSheet = lazy(async () => {
  const { LicencesSheet: Loaded } = await import('../licences/LicencesSheet.tsx')
  return { default: Loaded }
})

/**
 * Saving, printing, starting over, the other frames, the demos. None replaces work: each frame
 * stays in the list.
 */
export function FrameMenu() {
  const { newFrame, loadDemo } = useActions()
  const readState = useReadState()
  const hasParts = useAppState((state) => state.frame.parts.length > 0)
  const { save, trouble } = useSaveFile()
  const [open, setOpen] = useState<
    'menu' | 'calibration' | 'units' | 'projects' | 'licences' | null
  >(null)
  const button = useRef<HTMLButtonElement>(null)
  const close = () => {
    setOpen(null)
  }
  // A dialog gives the focus back to what had it, which is a line of the menu that is gone by then.
  const last = useRef(open)
  useEffect(() => {
    const hasClosed = last.current !== null && last.current !== 'menu' && open === null
    last.current = open
    if (hasClosed && document.activeElement === document.body) button.current?.focus()
  }, [open])
  const saveCsv = async () => {
    const { ledgerCsv } = await import('../../state/actions/csv.ts')
    download(new Blob([ledgerCsv(readState())]), readState().frame.name, '.csv')
  }
  const act = (item: MenuKey) => {
    close()
    switch (item) {
      case 'new':
        newFrame()
        break
      case 'print':
        window.print()
        break
      case 'paper':
        goTo('paper')
        break
      case 'csv':
        void saveCsv()
        break
      case 'sandpiper':
      case 'tern':
        void loadDemo(item)
        break
      case 'calibration':
      case 'units':
      case 'projects':
      case 'licences':
        setOpen(item)
    }
  }
  return (
    <>
      {hasParts ? (
        <>
          <PlainButton className="quiet" onPress={save}>
            Save file
          </PlainButton>
          <PlainButton
            className="quiet wide-only"
            onPress={() => {
              window.print()
            }}
          >
            Print sheet
          </PlainButton>
        </>
      ) : null}
      <PlainButton
        ref={button}
        className="quiet"
        aria-haspopup="menu"
        aria-expanded={open === 'menu'}
        onPress={() => {
          setOpen('menu')
        }}
      >
        More
      </PlainButton>
      {trouble === null ? null : (
        <p className="wrong-text" role="alert">
          {trouble}
        </p>
      )}
      <Suspense>
        {open === 'menu' ? (
          <FrameMenuList of={button} hasParts={hasParts} onAct={act} onClose={close} />
        ) : null}
        {open === 'projects' ? <ProjectsSheet isOpen onClose={close} /> : null}
        {open === 'calibration' ? <CalibrationSheet isOpen onClose={close} /> : null}
        {open === 'units' ? <UnitsSheet isOpen onClose={close} /> : null}
        {open === 'licences' ? <LicencesSheet isOpen onClose={close} /> : null}
      </Suspense>
    </>
  )
}
