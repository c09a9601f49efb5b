import { useRef } from 'react'
import { readList, type Intake } from './readDrop.ts'
import { PlainButton } from '../fields/PlainButton.tsx'

interface PickButtonProps {
  readonly children: string
  readonly className: string
  readonly onPick: (intake: Intake) => void
  /** Picks a whole folder instead of files. */
  readonly folder?: boolean
  readonly accept?: string
}

/** A button that opens the system's file or folder picker. */
export function PickButton({
  children,
  className,
  onPick,
  folder = false,
  accept,
}: PickButtonProps) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <PlainButton className={className} onPress={() => input.current?.click()}>
        {children}
      </PlainButton>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        aria-label={children}
        {...(folder ? { webkitdirectory: '' } : {})}
        {...(accept === undefined ? {} : { accept })}
        onChange={(event) => {
          const { files } = event.currentTarget
          if (files !== null && files.length > 0) onPick(readList(files))
          event.currentTarget.value = ''
        }}
      />
    </>
  )
}
