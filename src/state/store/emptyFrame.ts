import { AIRCRAFT_DEFAULTS } from '../../core/data/aircraft.ts'
import { PRICES_DEFAULTS } from '../../core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../core/data/printers.ts'
import type { Prices } from '../../core/model/figures.ts'
import type { Frame } from '../../core/model/frame.ts'

/** What a frame is called until someone names it. */
export const NEW_FRAME_NAME = 'New frame'

/** A frame without parts. */
export function emptyFrame(id: string, prices: Prices = PRICES_DEFAULTS): Frame {
  return {
    version: 5,
    id,
    name: NEW_FRAME_NAME,
    parts: [],
    materials: [],
    printer: PRINTER_DEFAULT,
    prices,
    carbon: null,
    aircraft: AIRCRAFT_DEFAULTS,
  }
}
