import { readFileSync } from 'node:fs'
import { PreweighError } from '../core/model/problem.ts'

const WHYS: Readonly<Record<string, (path: string) => string>> = {
  ENOENT: (path) => `there is no “${path}”`,
  ENOTDIR: (path) => `there is no “${path}”`,
  EISDIR: () => 'it is a folder',
  EACCES: () => 'it may not be opened',
  EPERM: () => 'it may not be opened',
  ENAMETOOLONG: () => 'its name is too long',
}

/**
 * Why the system would not read or write what is at `path`, in words behind “could not be read:”.
 * The path is the one looked up, since a relative one may count from elsewhere than was thought.
 */
export function whyUnread(error: unknown, path: string): string {
  if (!(error instanceof Error)) return String(error)
  const code = 'code' in error ? String(error.code) : ''
  return WHYS[code]?.(path) ?? error.message
}

/** Bytes of the file at `path`; `what` names it in the PreweighError of one that cannot be read. */
export function readBytes(path: string, what: string): Uint8Array {
  try {
    return readFileSync(path)
  } catch (error) {
    const message = `${what} could not be read: ${whyUnread(error, path)}.`
    throw new PreweighError('unreadable-file', message, 'Check its path and that it may be read.')
  }
}
