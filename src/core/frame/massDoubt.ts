import type { Aircraft, Item } from '../model/aircraft.ts'
import type { Material, Range } from '../model/figures.ts'
import { plasticSpreads } from '../figures/mass.ts'
import { combineSpreads } from '../figures/spread.ts'
import type { Spread } from '../figures/spread.ts'
import type { MassDoubt, SharedError, UncertainMass } from './doubt.ts'
import { weighedMassG } from './ledger.ts'
import type { PrintedPart } from './ledger.ts'

const even = (share: number): Spread => ({ low: share, high: share })

/** What a 0.1 g scale leaves, and how far the other pieces differ from the one weighed (common practice, no source). */
const SCALE_G = 0.1
const WEIGHED_SHARE = 0.01
/** How far a mass of an item may be off, by how it is known; a maker's figure typed in counts as calculated (common practice, no source). */
const ITEM_SHARE = { published: 0.05, computed: 0.12, memory: 0.3 } as const
const TYPED_SHARE = { estimated: 0.1, calculated: 0.05 } as const

const PRINTER_ID = 'printer'

/**
 * How far each line of the aircraft may be off, and what errors they share:
 * the spool's density and diameter for all parts of one material; the printer's habit (how tight lines lie, how much
 * they flow) for all printed parts; the count of walls, skins and infill for one part and all its pieces. A weighed part
 * has left them all behind. Growth is not in here: the odds are those of the lines as they stand.
 */
export function massDoubt(
  parts: readonly PrintedPart[],
  aircraft: Pick<Aircraft, 'items' | 'weighedG'>,
): MassDoubt {
  const unweighed = parts.filter((part) => weighedMassG(aircraft.weighedG, part.id) === null)
  const materials = new Map(unweighed.map((part) => [part.material.id, part.material]))
  const shared = [...materials.values()].map(spoolError)
  if (unweighed.length > 0) shared.push(printerError(unweighed))
  return {
    masses: [
      ...parts.map((part) => partMass(part, weighedMassG(aircraft.weighedG, part.id))),
      ...aircraft.items.map(itemMass),
    ],
    shared,
  }
}

function partMass(part: PrintedPart, weighedG: number | null): UncertainMass {
  const { id, name, quantity, figures, material } = part
  if (weighedG !== null) {
    return {
      id,
      name,
      massG: weighedG * quantity,
      spread: scaleSpread(weighedG),
      sharedIds: [],
      spreadWeighed: null,
    }
  }
  const massG = figures.massG.mid
  return {
    id,
    name,
    massG: massG * quantity,
    spread: without(spreadOf(figures.massG), plasticSpreads(material)),
    sharedIds: [spoolId(material), PRINTER_ID],
    spreadWeighed: scaleSpread(massG),
  }
}

function itemMass(item: Item): UncertainMass {
  const { id, name, quantity, massG, status, basis } = item
  const weighed = status === 'weighed'
  let spread: Spread
  if (status === 'weighed') spread = scaleSpread(massG)
  else spread = even(basis === 'typed' ? TYPED_SHARE[status] : ITEM_SHARE[basis])
  return {
    id,
    name,
    massG: massG * quantity,
    spread,
    sharedIds: [],
    spreadWeighed: weighed ? null : scaleSpread(massG),
  }
}

function spoolId(material: Material): string {
  return `spool:${material.id}`
}

/** `plasticSpreads` gives density, diameter, packing, flow, in this order: the spool's two, then the printer's two. */
function spoolError(material: Material): SharedError {
  const spool = (one: Material): Spread => combineSpreads(plasticSpreads(one).slice(0, 2))
  return {
    id: spoolId(material),
    name: `Spool of ${material.name}`,
    spread: spool(material),
    measure: `Type the density of your own spool of ${material.name}`,
    spreadMeasured: spool({ ...material, densityTyped: true }),
  }
}

/** The printer's part does not depend on the material. */
function printerError(parts: readonly PrintedPart[]): SharedError {
  const [first] = parts
  const spread = combineSpreads(first ? plasticSpreads(first.material).slice(2) : [])
  return {
    id: PRINTER_ID,
    name: 'Printer: packing and flow',
    spread,
    // A test block would tell, but the parts are what is weighed here, and each weighed one leaves this behind.
    measure: null,
    spreadMeasured: spread,
  }
}

function scaleSpread(massG: number): Spread {
  return even(massG > 0 ? Math.max(WEIGHED_SHARE, SCALE_G / massG) : 0)
}

function spreadOf(range: Range): Spread {
  const { low, mid, high } = range
  return mid > 0 ? { low: 1 - low / mid, high: high / mid - 1 } : even(0)
}

/** What is left of `whole` when `known`, added in quadrature, is taken out again. */
function without(whole: Spread, known: readonly Spread[]): Spread {
  const taken = combineSpreads(known)
  const rest = (all: number, part: number): number => Math.sqrt(Math.max(0, all ** 2 - part ** 2))
  return { low: rest(whole.low, taken.low), high: rest(whole.high, taken.high) }
}
