import type { IncomingFile } from '../../state/store/types.ts'

/**
 * What came in at once, and how many files of a folder were left alone because their name says they
 * hold no mesh.
 */
export interface Intake {
  readonly files: readonly IncomingFile[]
  readonly leftAlone: number
}

/** Names worth opening inside a folder; a file dropped by itself is opened whatever its name. */
const FOLDER_NAMES = /\.(stl|obj|3mf|zip|preweigh)$/i

/**
 * Files and folders of a drop. The browser empties a `DataTransfer` once its event is over,
 * so every entry is taken out before the first wait.
 */
export async function readDrop(transfer: DataTransfer): Promise<Intake> {
  const loose: File[] = []
  const folders: FileSystemDirectoryEntry[] = []
  for (const item of transfer.items) {
    if (item.kind !== 'file') continue
    const entry = item.webkitGetAsEntry()
    const file = item.getAsFile()
    if (entry?.isDirectory === true) folders.push(entry as FileSystemDirectoryEntry)
    else if (file !== null) loose.push(file)
  }
  const inFolders: File[] = []
  for (const folder of folders) inFolders.push(...(await walk(folder)))
  return sift(loose, inFolders)
}

/** Files of a picker; those of a folder picker carry their path inside the folder. */
export function readList(list: FileList): Intake {
  const all = [...list]
  return sift(
    all.filter((file) => file.webkitRelativePath === ''),
    all.filter((file) => file.webkitRelativePath !== ''),
  )
}

function sift(loose: readonly File[], inFolders: readonly File[]): Intake {
  const wanted = inFolders.filter((file) => FOLDER_NAMES.test(file.name))
  return {
    files: [...loose, ...wanted].map((file) => ({ name: file.name, blob: file })),
    leftAlone: inFolders.length - wanted.length,
  }
}

async function walk(folder: FileSystemDirectoryEntry): Promise<File[]> {
  const reader = folder.createReader()
  const files: File[] = []
  for (;;) {
    const batch = await new Promise<FileSystemEntry[]>((resolve, reject) => {
      reader.readEntries(resolve, reject)
    })
    if (batch.length === 0) return files
    for (const entry of batch) {
      if (entry.isDirectory) files.push(...(await walk(entry as FileSystemDirectoryEntry)))
      else {
        files.push(
          await new Promise<File>((resolve, reject) => {
            ;(entry as FileSystemFileEntry).file(resolve, reject)
          }),
        )
      }
    }
  }
}
