import type { Item } from '../../model/aircraft.ts'
import { JOINT_THREADS } from '../../model/joints.ts'
import { HEADS, HEAD_NAMES, MATERIAL_NAMES, NUTS, STANDOFF_ACROSS } from './data.ts'
import { insertMass } from './insert.ts'
import { nutMass } from './nut.ts'
import { screwMass } from './screw.ts'
import { standoffAcrossMm, standoffMass } from './standoff.ts'
import { tubeMass } from './tube.ts'
import type { TubeSpec } from './tube.ts'
import type {
  HardwareMass,
  InsertSpec,
  MetricSize,
  NutSpec,
  NutStandard,
  ScrewSpec,
  ScrewStandard,
  StandoffSpec,
  WasherSpec,
} from './types.ts'
import { washerMass } from './washer.ts'

/** One thing the catalogue can make. */
export type CatalogueChoice =
  | ({ readonly kind: 'screw' } & ScrewSpec)
  | ({ readonly kind: 'nut' } & NutSpec)
  | ({ readonly kind: 'washer' } & WasherSpec)
  | ({ readonly kind: 'standoff' } & StandoffSpec)
  | ({ readonly kind: 'insert' } & InsertSpec)
  | ({ readonly kind: 'tube' } & TubeSpec)

export interface CatalogueEntry extends HardwareMass {
  readonly name: string
}

/**
 * The plain name and the mass of one piece. Throws `bad-settings` for a size the standard does not
 * have.
 */
export function catalogueEntry(choice: CatalogueChoice): CatalogueEntry {
  return { name: nameOf(choice), ...massOf(choice) }
}

/**
 * The item for the aircraft's list. Its status is `calculated`, or `estimated` where the dimensions
 * are from memory. Standoffs and tubes hold the frame up and count as structure, the rest as
 * fasteners.
 */
export function catalogueItem(
  choice: CatalogueChoice,
  count: { readonly id: string; readonly quantity: number; readonly costEach: number },
): Item {
  const { name, massG, basis } = catalogueEntry(choice)
  return {
    id: count.id,
    name,
    group: choice.kind === 'standoff' || choice.kind === 'tube' ? 'structure' : 'fasteners',
    quantity: count.quantity,
    massG,
    costEach: count.costEach,
    status: basis === 'memory' ? 'estimated' : 'calculated',
    basis,
    positionMm: null,
  }
}

export function screwSizes(standard: ScrewStandard): readonly MetricSize[] {
  return JOINT_THREADS.filter((size) => HEADS[standard][size] !== undefined)
}

export function nutSizes(standard: NutStandard): readonly MetricSize[] {
  return JOINT_THREADS.filter((size) => NUTS[standard][size] !== undefined)
}

function massOf(choice: CatalogueChoice): HardwareMass {
  switch (choice.kind) {
    case 'screw':
      return screwMass(choice)
    case 'nut':
      return nutMass(choice)
    case 'washer':
      return washerMass(choice)
    case 'standoff':
      return standoffMass(choice)
    case 'insert':
      return insertMass(choice)
    case 'tube':
      return tubeMass(choice)
  }
}

function nameOf(choice: CatalogueChoice): string {
  switch (choice.kind) {
    case 'screw':
      return (
        `Screw ${choice.size} × ${choice.lengthMm}, ${HEAD_NAMES[choice.standard]}, ` +
        `${MATERIAL_NAMES[choice.material]} (${choice.standard})`
      )
    case 'nut':
      return (
        `${choice.standard === 'ISO 7040' ? 'Locknut' : 'Nut'} ${choice.size}, ` +
        `${MATERIAL_NAMES[choice.material]} (${choice.standard})`
      )
    case 'washer':
      return `Washer ${choice.size}, ${MATERIAL_NAMES[choice.material]} (ISO 7089)`
    case 'standoff':
      return (
        `Standoff ${choice.size} × ${choice.lengthMm}, ${choice.shape}${widthNote(choice)}, ` +
        MATERIAL_NAMES[choice.material]
      )
    case 'insert':
      return `Heat-set insert ${choice.size} × ${choice.lengthMm}, brass`
    case 'tube': {
      const material = choice.material === 'carbon' ? 'carbon' : MATERIAL_NAMES[choice.material]
      return choice.innerMm > 0
        ? `Tube ${choice.outerMm}/${choice.innerMm} × ${choice.lengthMm}, ${material}`
        : `Rod ${choice.outerMm} × ${choice.lengthMm}, ${material}`
    }
  }
}

/** Named only where it is not the usual width. */
function widthNote(choice: StandoffSpec): string {
  const acrossMm = standoffAcrossMm(choice)
  return acrossMm === STANDOFF_ACROSS[choice.size][choice.shape] ? '' : ` ${acrossMm} mm`
}
