import type { Finding, LengthUnit, Mesh, MeshMeasure, ReadMesh } from '../model/mesh.ts'
import { UNIT_PLURAL, unitToMm } from '../model/units.ts'
import { findHoles } from './holes/findHoles.ts'
import { suggestUnit, type UnitSuggestion } from './holes/suggestUnit.ts'
import { measureMesh } from './measure.ts'
import { shownMesh } from './outwardMesh.ts'
import { MOST_PIECES } from './split/findPieces.ts'
import { splitItems } from './split/splitItems.ts'
import { splitPlate } from './split/splitPlate.ts'
import type { Plate } from './split/splitPlate.ts'
import { takeApart } from './takeApart.ts'

/** Everything about a mesh that does not depend on a recipe. */
export interface Inspection {
  /** With the reader's findings first. */
  readonly measure: MeshMeasure
  /**
   * A unit the file was more likely drawn in; absent where the file states its own or the present
   * one is as good.
   */
  readonly unitHint?: UnitSuggestion
  /** What the file would be as parts of their own; absent for a single part. */
  readonly plate?: PlateSummary
}

export interface PlateSummary {
  readonly groups: readonly {
    /** Mirrored ones included. */
    readonly count: number
    readonly mirrored: number
    readonly volumeMm3: number
  }[]
  /** Loose triangles that belong to none of them. */
  readonly leftOut: number
}

/**
 * Looking for equal parts among more bodies, or in a mesh of more triangles, takes longer than a
 * first look may: 4 µs a triangle, as long as all the rest from bytes to figures.
 */
const MOST_TRIANGLES = 1_000_000

/**
 * @param outward of the read mesh, taken with the same `keepsHairs`; see `outwardMesh`.
 * @throws PreweighError as `measureMesh` does.
 */
export function inspectMesh(
  read: ReadMesh,
  outward: Mesh,
  unit: LengthUnit,
  apart = takeApart(read.mesh),
  keepsHairs = false,
): Inspection {
  const mm = unitToMm(unit)
  const measure = measureMesh(read.mesh, mm, apart, keepsHairs)
  const unitHint =
    read.unit === null ? suggestUnit(measure.boundsMm, findHoles(outward), unit) : null
  const isPlate =
    measure.bodies > 1 && measure.bodies <= MOST_PIECES && measure.triangles <= MOST_TRIANGLES
  const plate = summarise(
    splitItems(read) ??
      (isPlate ? splitPlate(shownMesh(read.mesh, { scaleToMm: mm, keepsHairs }, apart)) : null),
    mm,
  )
  return {
    measure: { ...measure, findings: mergeFindings(read.findings, measure.findings, unitHint) },
    ...(unitHint === null ? {} : { unitHint }),
    ...(plate === null ? {} : { plate }),
  }
}

function summarise(plate: Plate | null, mm: number): PlateSummary | null {
  if (plate === null) return null
  const { groups, leftOut } = plate
  if (groups.reduce((sum, { count }) => sum + count, 0) < 2) return null
  return {
    groups: groups.map(({ count, mirrored, shape }) => ({
      count,
      mirrored,
      volumeMm3: shape.volume * mm ** 3,
    })),
    leftOut,
  }
}

/** Where the unit is doubted with reasons, that the size is unlikely need not be said as well. */
function mergeFindings(
  read: readonly Finding[],
  measured: readonly Finding[],
  hint: UnitSuggestion | null,
): readonly Finding[] {
  if (hint === null) return [...read, ...measured]
  const doubt: Finding = {
    code: 'not-millimetres',
    grade: hint.sure ? 'changes the grams' : 'worth knowing',
    short: `drawn in ${UNIT_PLURAL[hint.unit]}?`,
    message: `${hint.reason} Nothing is rescaled until you choose the unit.`,
  }
  return [doubt, ...read, ...measured.filter(({ code }) => code !== 'unlikely-size')]
}
