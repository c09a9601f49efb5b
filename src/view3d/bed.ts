import { BufferGeometry, Float32BufferAttribute } from 'three'

/** Cells along the part's longer side that read as a grid rather than as a tone or as nothing. */
const CELLS = 14
/** The grid goes on this share of the part's longer side beyond it, at least one cell. */
const MARGIN = 0.22

/** 1, 2 or 5 times a power of ten. */
export function roundStep(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value))
  const lead = value / power
  return power * (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10)
}

/**
 * The cell of the grid under a part, mm: 1, 5, 10, 50, 100 … so that five or ten cells make a round
 * length.
 */
function gridCellMm(longestMm: number): number {
  const power = 10 ** Math.floor(Math.log10(longestMm / CELLS))
  const lead = longestMm / CELLS / power
  return power * (lead < 1.5 ? 1 : lead < 7 ? 5 : 10)
}

export interface Bed {
  readonly fine: BufferGeometry
  readonly bold: BufferGeometry
}

/**
 * A patch of the bed around the middle, z = 0, snapped to whole cells; every fifth (or second) line
 * and the rim are bold.
 */
export function layBed(widthMm: number, depthMm: number): Bed & { readonly cellMm: number } {
  const longestMm = Math.max(widthMm, depthMm, 1)
  const cellMm = gridCellMm(longestMm)
  const boldEvery = String(cellMm).includes('5') ? 2 : 5
  const margin = Math.max(cellMm, longestMm * MARGIN)
  const across = Math.ceil((widthMm / 2 + margin) / cellMm)
  const along = Math.ceil((depthMm / 2 + margin) / cellMm)
  const fine: number[] = []
  const bold: number[] = []
  for (let i = -across; i <= across; i++) {
    const lines = i % boldEvery === 0 || Math.abs(i) === across ? bold : fine
    lines.push(i * cellMm, -along * cellMm, 0, i * cellMm, along * cellMm, 0)
  }
  for (let i = -along; i <= along; i++) {
    const lines = i % boldEvery === 0 || Math.abs(i) === along ? bold : fine
    lines.push(-across * cellMm, i * cellMm, 0, across * cellMm, i * cellMm, 0)
  }
  return { fine: linesOf(fine), bold: linesOf(bold), cellMm }
}

function linesOf(points: readonly number[]): BufferGeometry {
  return new BufferGeometry().setAttribute('position', new Float32BufferAttribute(points, 3))
}
