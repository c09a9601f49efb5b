import { useEffect, useState } from 'react'
import { useActions } from '../appContext.ts'
import { readDrop, readList, type Intake } from './readDrop.ts'

/**
 * Takes files dropped anywhere on the window or pasted, and says so while a drag is above it. What
 * is let go over the zones of an opened part becomes zones of it.
 */
export function WindowDrop({ onIntake }: { readonly onIntake: (intake: Intake) => void }) {
  const { addZones } = useActions()
  const [above, setAbove] = useState(false)
  useEffect(() => {
    // Enter and leave fire for every element crossed; only their balance tells whether the drag is
    // still here.
    let depth = 0
    const show = (next: number) => {
      depth = Math.max(0, next)
      setAbove(depth > 0)
    }
    const enter = (event: DragEvent) => {
      if (hasFiles(event)) show(depth + 1)
    }
    const leave = (event: DragEvent) => {
      if (hasFiles(event)) show(depth - 1)
    }
    const over = (event: DragEvent) => {
      if (hasFiles(event)) event.preventDefault()
    }
    const drop = (event: DragEvent) => {
      if (!hasFiles(event) || event.dataTransfer === null) return
      event.preventDefault()
      show(0)
      const partId = zonesUnder(event)
      void readDrop(event.dataTransfer).then((intake) => {
        if (partId === null) onIntake(intake)
        else void addZones(partId, intake.files)
      })
    }
    const paste = (event: ClipboardEvent) => {
      const files = event.clipboardData?.files
      if (files !== undefined && files.length > 0) onIntake(readList(files))
    }
    window.addEventListener('dragenter', enter)
    window.addEventListener('dragleave', leave)
    window.addEventListener('dragover', over)
    window.addEventListener('drop', drop)
    window.addEventListener('paste', paste)
    return () => {
      window.removeEventListener('dragenter', enter)
      window.removeEventListener('dragleave', leave)
      window.removeEventListener('dragover', over)
      window.removeEventListener('drop', drop)
      window.removeEventListener('paste', paste)
    }
  }, [onIntake, addZones])
  if (!above) return null
  return (
    <div className="drop-veil" aria-hidden="true">
      <p>Let go to weigh these parts</p>
      <p className="quiet-text">Meshes, folders, ZIPs of meshes, printer files or a saved frame</p>
    </div>
  )
}

/** The part whose zones lie under the pointer. */
function zonesUnder({ target }: DragEvent): string | null {
  const zones = target instanceof Element ? target.closest('[data-zones-of]') : null
  return zones?.getAttribute('data-zones-of') ?? null
}

function hasFiles(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes('Files') ?? false
}
