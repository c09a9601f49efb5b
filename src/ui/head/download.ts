import { useState } from 'react'
import { PreweighError } from '../../core/model/problem.ts'
import { PROJECT_ENDING } from '../../state/storage/projectFile.ts'
import { useActions, useReadState } from '../appContext.ts'

/** Hands a file to the browser, named after the frame. */
export function download(content: Blob, frameName: string, ending: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(content)
  link.download = fileNameOf(frameName) + ending
  link.click()
  // The browser has taken hold of the file once the click is through.
  setTimeout(() => {
    URL.revokeObjectURL(link.href)
  }, 0)
}

/** Saves the frame as a project file; `trouble` says why the last try failed. */
export function useSaveFile(): { save: () => void; trouble: string | null } {
  const { saveProject } = useActions()
  const readState = useReadState()
  const [trouble, setTrouble] = useState<string | null>(null)
  const save = async () => {
    try {
      download(await saveProject(), readState().frame.name, PROJECT_ENDING)
      setTrouble(null)
    } catch (error) {
      setTrouble(wordsOf(error))
    }
  }
  return { save: () => void save(), trouble }
}

function wordsOf(error: unknown): string {
  if (error instanceof PreweighError) return `${error.message} ${error.problem.advice}`
  return `The file could not be written: ${String(error)}.`
}

function fileNameOf(name: string): string {
  return name.replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-|-$/g, '') || 'frame'
}
