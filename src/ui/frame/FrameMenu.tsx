import { lazy, Suspense, useState } from 'react'
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components'
import { ledgerCsv } from '../../state/actions/csv.ts'
import { useActions, useAppState, useReadState } from '../appContext.ts'
import { download, useSaveFile } from './download.ts'

const CalibrationSheet = lazy(async () => {
  const { CalibrationSheet: Loaded } = await import('../calibration/CalibrationSheet.tsx')
  return { default: Loaded }
})

const ProjectsSheet = lazy(async () => {
  const { ProjectsSheet: Loaded } = await import('../projects/ProjectsSheet.tsx')
  return { default: Loaded }
})

const LicencesSheet = lazy(async () => {
  const { LicencesSheet: Loaded } = await import('../licences/LicencesSheet.tsx')
  return { default: Loaded }
})

type Item = 'calibration' | 'projects' | 'new' | 'csv' | 'sandpiper' | 'tern' | 'licences'

/** Saving, starting over, the other frames, the demos. None replaces work: each frame stays in the list. */
export function FrameMenu() {
  const { newFrame, loadDemo } = useActions()
  const readState = useReadState()
  const hasParts = useAppState((state) => state.frame.parts.length > 0)
  const { save, trouble } = useSaveFile()
  const [open, setOpen] = useState<'calibration' | 'projects' | 'licences' | null>(null)
  const close = () => {
    setOpen(null)
  }
  const act = (item: Item) => {
    switch (item) {
      case 'new':
        newFrame()
        break
      case 'csv':
        download(new Blob([ledgerCsv(readState())]), readState().frame.name, '.csv')
        break
      case 'sandpiper':
      case 'tern':
        void loadDemo(item)
        break
      case 'calibration':
      case 'projects':
      case 'licences':
        setOpen(item)
    }
  }
  return (
    <>
      {hasParts ? (
        <Button className="quiet" onPress={save}>
          Save file
        </Button>
      ) : null}
      <MenuTrigger>
        <Button className="quiet">More</Button>
        <Popover className="pop" placement="bottom end">
          <Menu
            className="pop-list"
            onAction={(key) => {
              act(key as Item)
            }}
          >
            <MenuItem id="new" className="pop-item">
              New frame
            </MenuItem>
            <MenuItem id="projects" className="pop-item">
              Frames on this device
            </MenuItem>
            {hasParts ? (
              <MenuItem id="csv" className="pop-item">
                Save as CSV
              </MenuItem>
            ) : null}
            <MenuItem id="sandpiper" className="pop-item">
              Demo: Sandpiper, a tricopter
            </MenuItem>
            <MenuItem id="tern" className="pop-item">
              Demo: Tern, a glider
            </MenuItem>
            <MenuItem id="calibration" className="pop-item">
              Calibrate in two prints
            </MenuItem>
            <MenuItem id="licences" className="pop-item">
              Licences
            </MenuItem>
          </Menu>
        </Popover>
      </MenuTrigger>
      {trouble === null ? null : (
        <p className="wrong-text" role="alert">
          {trouble}
        </p>
      )}
      {open === 'projects' ? (
        <Suspense>
          <ProjectsSheet isOpen onClose={close} />
        </Suspense>
      ) : null}
      {open === 'calibration' ? (
        <Suspense>
          <CalibrationSheet isOpen onClose={close} />
        </Suspense>
      ) : null}
      {open === 'licences' ? (
        <Suspense>
          <LicencesSheet isOpen onClose={close} />
        </Suspense>
      ) : null}
    </>
  )
}
