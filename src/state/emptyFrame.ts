import { PRICES_DEFAULTS } from '../core/data/prices.ts'
import { PRINTER_DEFAULT } from '../core/data/printers.ts'
import type { Prices } from '../core/figures.ts'
import type { Frame } from '../core/frame.ts'

/** A frame without parts. */
export function emptyFrame(id: string, prices: Prices = PRICES_DEFAULTS): Frame {
  return {
    version: 1,
    id,
    name: 'New frame',
    parts: [],
    materials: [],
    printer: PRINTER_DEFAULT,
    prices,
    carbon: null,
  }
}
