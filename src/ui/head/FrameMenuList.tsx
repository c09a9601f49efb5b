import '../styles/late.css'
import type { RefObject } from 'react'
import { Menu, MenuItem, Popover } from 'react-aria-components'

export type MenuKey =
  | 'print'
  | 'paper'
  | 'calibration'
  | 'units'
  | 'projects'
  | 'new'
  | 'csv'
  | 'sandpiper'
  | 'tern'
  | 'licences'

interface FrameMenuListProps {
  readonly of: RefObject<HTMLButtonElement | null>
  readonly hasParts: boolean
  readonly onAct: (item: MenuKey) => void
  readonly onClose: () => void
}

/** What stands behind “More”. */
export function FrameMenuList({ of, hasParts, onAct, onClose }: FrameMenuListProps) {
  return (
    <Popover
      className="pop"
      placement="bottom end"
      triggerRef={of}
      isOpen
      onOpenChange={(isOpen) => {
        if (!isOpen) onClose()
      }}
    >
      <Menu
        className="pop-list"
        aria-label="More"
        autoFocus="first"
        onAction={(key) => {
          onAct(key as MenuKey)
        }}
      >
        <MenuItem id="new" className="pop-item">
          New frame
        </MenuItem>
        <MenuItem id="projects" className="pop-item">
          Frames on this device
        </MenuItem>
        {hasParts ? (
          <>
            <MenuItem id="print" className="pop-item">
              Print this sheet
            </MenuItem>
            <MenuItem id="paper" className="pop-item">
              The whole set on paper
            </MenuItem>
            <MenuItem id="csv" className="pop-item">
              Save as CSV
            </MenuItem>
          </>
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
        <MenuItem id="units" className="pop-item">
          Units
        </MenuItem>
        <MenuItem id="licences" className="pop-item">
          Licences
        </MenuItem>
      </Menu>
    </Popover>
  )
}
