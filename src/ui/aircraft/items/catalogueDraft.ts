import {
  nutSizes,
  screwSizes,
  type CatalogueChoice,
} from '../../../core/aircraft/hardware/catalogue.ts'
import { MATERIAL_NAMES } from '../../../core/aircraft/hardware/data.ts'
import type { TubeMaterial } from '../../../core/aircraft/hardware/tube.ts'
import type { MetricSize } from '../../../core/aircraft/hardware/types.ts'
import { JOINT_THREADS } from '../../../core/model/joints.ts'

export type DraftKind =
  | 'ISO 4762'
  | 'ISO 7380-1'
  | 'ISO 10642'
  | 'ISO 4032'
  | 'ISO 7040'
  | 'ISO 7089'
  | 'hex'
  | 'round'
  | 'insert'
  | 'tube'

/** What the form holds; not every kind uses every field. */
export interface Draft {
  readonly kind: DraftKind
  readonly size: MetricSize
  readonly lengthMm: number
  readonly material: TubeMaterial
  readonly outerMm: number
  readonly innerMm: number
}

export const START: Draft = {
  kind: 'ISO 4762',
  size: 'M3',
  lengthMm: 10,
  material: 'steel',
  outerMm: 8,
  innerMm: 6,
}

interface Kind {
  readonly id: DraftKind
  readonly name: string
  readonly detail: string
  readonly long: boolean
  readonly tube?: true
}

export const KINDS: readonly Kind[] = [
  { id: 'ISO 4762', name: 'Socket head screw', detail: 'ISO 4762', long: true },
  { id: 'ISO 7380-1', name: 'Button head screw', detail: 'ISO 7380-1', long: true },
  { id: 'ISO 10642', name: 'Countersunk screw', detail: 'ISO 10642', long: true },
  { id: 'ISO 4032', name: 'Nut', detail: 'ISO 4032', long: false },
  { id: 'ISO 7040', name: 'Locknut', detail: 'ISO 7040', long: false },
  { id: 'ISO 7089', name: 'Washer', detail: 'ISO 7089', long: false },
  { id: 'hex', name: 'Hex standoff', detail: 'threaded through', long: true },
  { id: 'round', name: 'Round standoff', detail: 'threaded through', long: true },
  { id: 'insert', name: 'Heat-set insert', detail: 'brass', long: true },
  { id: 'tube', name: 'Tube or rod', detail: 'by length', long: true, tube: true },
]

export const NAMED_MATERIALS: Readonly<Record<TubeMaterial, string>> = {
  ...MATERIAL_NAMES,
  carbon: 'carbon',
}

export function sizesOf(kind: DraftKind): readonly MetricSize[] {
  switch (kind) {
    case 'ISO 4762':
    case 'ISO 7380-1':
    case 'ISO 10642':
      return screwSizes(kind)
    case 'ISO 4032':
    case 'ISO 7040':
      return nutSizes(kind)
    default:
      return JOINT_THREADS
  }
}

export function materialsOf(kind: DraftKind): readonly TubeMaterial[] {
  switch (kind) {
    case 'insert':
      return ['brass']
    case 'tube':
      return ['carbon', 'aluminium', 'steel', 'brass', 'nylon']
    case 'hex':
    case 'round':
      return ['aluminium', 'brass', 'nylon', 'steel', 'stainless', 'titanium']
    case 'ISO 4032':
    case 'ISO 7040':
    case 'ISO 7089':
      return ['steel', 'stainless', 'titanium', 'aluminium', 'brass', 'nylon']
    default:
      return ['steel', 'stainless', 'titanium', 'aluminium-7075', 'brass', 'nylon']
  }
}

/** What the catalogue is asked for. */
export function choiceOf(draft: Draft): CatalogueChoice {
  const { kind, size, lengthMm, outerMm, innerMm } = draft
  if (kind === 'tube') return { kind, outerMm, innerMm, lengthMm, material: draft.material }
  if (kind === 'insert') return { kind, size, lengthMm }
  const material = draft.material === 'carbon' ? 'steel' : draft.material
  switch (kind) {
    case 'ISO 4762':
    case 'ISO 7380-1':
    case 'ISO 10642':
      return { kind: 'screw', standard: kind, size, lengthMm, material }
    case 'ISO 4032':
    case 'ISO 7040':
      return { kind: 'nut', standard: kind, size, material }
    case 'ISO 7089':
      return { kind: 'washer', size, material }
    case 'hex':
    case 'round':
      return { kind: 'standoff', shape: kind, size, lengthMm, material }
  }
}
