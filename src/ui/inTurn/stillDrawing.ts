import { createContext } from 'react'

/**
 * Told by each part of a page that is not all there yet; the call that it gets back says that it
 * is.
 */
export type Begin = () => () => void

/** What asks to know when all below it is drawn; null where nobody asks. */
export const StillDrawing = createContext<Begin | null>(null)
