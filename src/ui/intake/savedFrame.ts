import { PROJECT_ENDING } from '../../state/storage/projectFile.ts'
import type { IncomingFile } from '../../state/store/types.ts'

/**
 * Whether a file is a frame saved earlier, by its name; it replaces the page, so the page asks
 * before opening it.
 */
export function isSavedFrame(file: IncomingFile): boolean {
  return file.name.toLowerCase().endsWith(PROJECT_ENDING)
}
