import { useState } from 'react'
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components'
import { PreweighError } from '../../core/problem.ts'
import { PROJECT_ENDING } from '../../state/projectFile.ts'
import { useActions, useAppState, useReadState } from '../appContext.ts'
import { Confirm } from '../fields/Confirm.tsx'

type Item = 'save' | 'new' | 'sandpiper' | 'tern'

const WORDS: Readonly<Record<Exclude<Item, 'save'>, string>> = {
  new: 'Start a new frame',
  sandpiper: 'Load Sandpiper',
  tern: 'Load Tern',
}

/** Saving, starting over, the demos. What replaces the present work asks first. */
export function FrameMenu() {
  const { saveProject, newFrame, loadDemo } = useActions()
  const readState = useReadState()
  const parts = useAppState((state) => state.frame.parts.length)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [asked, setAsked] = useState<Exclude<Item, 'save'> | null>(null)
  const save = async () => {
    try {
      const blob = await saveProject()
      download(blob, fileNameOf(readState().frame.name) + PROJECT_ENDING)
      setTrouble(null)
    } catch (error) {
      setTrouble(wordsOf(error))
    }
  }
  const replace = (item: Exclude<Item, 'save'>) => {
    if (item === 'new') newFrame()
    else void loadDemo(item)
  }
  const act = (item: Item) => {
    if (item === 'save') void save()
    else if (parts === 0) replace(item)
    else setAsked(item)
  }
  return (
    <>
      {parts === 0 ? null : (
        <Button className="quiet" onPress={() => void save()}>
          Save file
        </Button>
      )}
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
            <MenuItem id="sandpiper" className="pop-item">
              Demo: Sandpiper, a tricopter
            </MenuItem>
            <MenuItem id="tern" className="pop-item">
              Demo: Tern, a glider
            </MenuItem>
          </Menu>
        </Popover>
      </MenuTrigger>
      {trouble === null ? null : (
        <p className="wrong-text" role="alert">
          {trouble}
        </p>
      )}
      <Confirm
        isOpen={asked !== null}
        title={asked === null ? '' : `${WORDS[asked]}?`}
        text={`It takes the place of “${readState().frame.name}” with its ${parts} part${parts === 1 ? '' : 's'}. Save a file first if you want it back on another day.`}
        yes={asked === null ? '' : WORDS[asked]}
        onNo={() => {
          setAsked(null)
        }}
        onYes={() => {
          if (asked !== null) replace(asked)
          setAsked(null)
        }}
      />
    </>
  )
}

function wordsOf(error: unknown): string {
  if (error instanceof PreweighError) return `${error.message} ${error.problem.advice}`
  return `The file could not be written: ${String(error)}.`
}

function fileNameOf(name: string): string {
  return name.replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-|-$/g, '') || 'frame'
}

function download(blob: Blob, fileName: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(blob)
  link.download = fileName
  link.click()
  // The browser has taken hold of the file once the click is through.
  setTimeout(() => {
    URL.revokeObjectURL(link.href)
  }, 0)
}
