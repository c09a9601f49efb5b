import { AIR } from './rooms.ts'

/** Bare between lines, not air. */
const SPECK = 255

/**
 * Of a raster `width` cells wide, beyond which all is air, names what no square of three by three
 * cells of air reaches: specks that lines leave between them, at their ends above all.
 */
export function fillSpecks(cells: Uint8Array, width: number): void {
  const height = cells.length / width
  const across = width + 2 * MARGIN
  const air = new Uint8Array(across * (height + 2 * MARGIN)).fill(1)
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      if (cells[row * width + column] !== AIR) air[(row + MARGIN) * across + column + MARGIN] = 0
    }
  }
  const wide = threeByThree(air, across, 1)
  // Widened again by one cell each way: what is not three by three of what is not wide.
  const open = threeByThree(wide, across, 0)
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const cell = row * width + column
      const padded = (row + MARGIN) * across + column + MARGIN
      if (cells[cell] === AIR && open[padded] === 0) cells[cell] = SPECK
    }
  }
}

const MARGIN = 2

/** Cells that keep `state`, for all around them have it; all others have the other of 0 and 1. */
function threeByThree(of: Uint8Array, across: number, state: 0 | 1): Uint8Array {
  const kept = new Uint8Array(of.length).fill(1 - state)
  const last = of.length - across - 1
  for (let i = across + 1; i < last; i++) {
    if (
      of[i] === state &&
      of[i - 1] === state &&
      of[i + 1] === state &&
      of[i - across] === state &&
      of[i - across - 1] === state &&
      of[i - across + 1] === state &&
      of[i + across] === state &&
      of[i + across - 1] === state &&
      of[i + across + 1] === state
    ) {
      kept[i] = state
    }
  }
  return kept
}
