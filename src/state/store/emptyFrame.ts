import { AIRCRAFT_DEFAULTS } from '../../core/data/aircraft.ts'
import { PRICES_DEFAULTS } from '../../core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../core/data/printers.ts'
import type { Frame } from '../../core/model/frame.ts'
import type { FrameMine } from './workshop.ts'

/** What a frame is called until someone names it. */
export const NEW_FRAME_NAME = 'New frame'

const USUAL: FrameMine = {
  printer: PRINTER_DEFAULT,
  prices: PRICES_DEFAULTS,
  materials: [],
  roles: [],
  printers: [],
}

/** A frame without parts, that starts with what is the builder's. */
export function emptyFrame(id: string, mine: FrameMine = USUAL): Frame {
  const { printer, printers, prices, materials, roles } = mine
  return {
    version: 8,
    id,
    name: NEW_FRAME_NAME,
    parts: [],
    materials,
    ...(roles.length === 0 ? {} : { roles }),
    printer,
    ...(printers.length === 0 ? {} : { printers }),
    prices,
    carbon: null,
    aircraft: AIRCRAFT_DEFAULTS,
  }
}
