import type { Printer } from '../../src/core/model/figures.ts'
import { halfTurnSine, pathLength } from './layTool.ts'
import type { Path } from './layTool.ts'

export type Point = Path[number]

export type LineKind = 'wall' | 'skin' | 'infill'
export type SpeedKind = 'outer' | 'inner' | 'small' | 'skin' | 'top' | 'strand' | 'infill'

/** One line with the way to it from where the last one ended. */
export interface LaidLine {
  readonly kind: LineKind
  readonly hopMm: number
  readonly line: DrawnLine
}

/** A line of one layer, wherever its nozzle comes from. */
export interface DrawnLine {
  readonly path: Path
  /** Of every move of the path. */
  readonly speeds: readonly SpeedKind[]
  readonly lengthMm: number
  /** Of every move. */
  readonly lengthsMm: readonly number[]
  /** Sine of half the turn at every point; 0 at either end. */
  readonly turns: readonly number[]
  /** What printers that drove it took. */
  readonly seconds: WeakMap<Printer, number>
}

/** A part as lines in the order they are laid. */
export interface Laid {
  readonly lineMm: number
  readonly layers: readonly { readonly heightMm: number; readonly lines: readonly LaidLine[] }[]
  readonly lengthMm: Readonly<Record<LineKind, number>>
}

/** With what every printer needs to know of it, told once. */
export function drawn(
  path: Path,
  speedOf: (p: Point, q: Point, move: number) => SpeedKind,
): DrawnLine {
  return {
    path,
    speeds: path.slice(1).map((q, k) => speedOf(path[k]!, q, k)),
    lengthMm: pathLength(path),
    lengthsMm: path.slice(1).map((q, i) => distance(q, path[i]!)),
    turns: path.map((q, i) =>
      i === 0 || i === path.length - 1 ? 0 : halfTurnSine(path[i - 1]!, q, path[i + 1]!),
    ),
    seconds: new WeakMap(),
  }
}

export const distance = (p: Point, q: Point): number => Math.hypot(p[0] - q[0], p[1] - q[1])
