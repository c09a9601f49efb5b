import { PreweighError } from '../../model/problem.ts'
import { solidElastic } from '../moduli/printedModuli.ts'
import { cellBodies, keepBodies } from '../solid/bodies.ts'
import { buildLevel } from '../solid/buildLevel.ts'
import { conjugateGradients } from '../solid/conjugateGradients.ts'
import { lowestTones } from '../solid/frequencies.ts'
import { holdPart } from '../solid/multigrid.ts'
import type { Field, Level } from '../solid/types.ts'
import { beamOf, type BeamSays } from './beam.ts'
import { gripNodes, turnPoint } from './gripNodes.ts'
import { partGrid, type Laid, type PartGrid } from './partGrid.ts'
import { lineOfMoves, nodeWeights, slopeAtPush, type LinePoint } from './readMoves.ts'
import { sectionsOf, type NoBeam, type PartSections } from './sections.ts'
import { stressesOf, type Stresses } from './stresses.ts'
import type { LoadCase, PartCells } from './types.ts'

export interface SolveAsk {
  readonly cells: PartCells
  readonly laid: Laid
  /** Of one piece, supports off. g */
  readonly massG: number
  readonly load: LoadCase
  readonly wantTones: boolean
}

export interface SolveWatch {
  /** Share of the way, 0–1, as far as can be told. */
  readonly onProgress?: (fraction: number) => void
}

/** A part under its load, with the moduli as they stand: no doubt in it yet. */
export interface PartSolved {
  /** Where it is pushed, the way it is pushed. mm */
  readonly deflectionMm: number
  readonly slopeDeg: number
  readonly stresses: Stresses
  /** First three, a second; empty where they were not asked for. */
  readonly hz: readonly number[]
  /** How its middle line moves along the load, from what is held to what is pushed. */
  readonly line: readonly LinePoint[]
  /** The same load on a beam of the part's own sections. */
  readonly beam: BeamSays
  readonly sections: PartSections | NoBeam
  readonly cells: number
  readonly steps: number
  /** Share of the cells that bridge a gap narrower than they are. */
  readonly gapShare: number
  /** Share of the cells that hang on nothing held and were left out. */
  readonly looseShare: number
}

/** 1e-3 of the load is enough for a deflection; stresses want more. */
const TOLERANCE = 2e-4
/** A panel of single walls took more than 600; each is some milliseconds for thousands of cells. */
const MOST_STEPS = 1500
/** Where cells hang together is asked, not how stiff they are. */
const SOME_PLASTIC = { youngsMPa: 1000, acrossShare: 1 }
const TONES = { count: 3, tolerance: 1e-3, mostSteps: 40 }

/**
 * @throws PreweighError `bad-settings` where a grip meets no cell, where what is pushed hangs on
 *   nothing that is held or touches it along an edge only, and where it does not settle.
 */
export function solvePart(
  { cells, laid, massG, load, wantTones }: SolveAsk,
  watch: SolveWatch = {},
): PartSolved {
  const made = partGrid(cells, laid)
  const { level, looseShare, holdNodes, pushNodes } = keepHeld(made, cells.turnDeg, load)
  const held = new Uint8Array(3 * level.nodes)
  const skip = new Uint8Array(level.nodes)
  for (const node of holdNodes) held.fill(1, 3 * node, 3 * node + 3)
  for (const node of [...holdNodes, ...pushNodes]) skip[node] = 1
  const weights = nodeWeights(level, made.plasticShare)
  const pushed = pushNodes.reduce((sum, node) => sum + weights[node]!, 0)
  const direction = turnPoint(load.direction, cells.turnDeg)
  const forces: Field = new Float64Array(3 * level.nodes)
  for (const node of pushNodes) {
    const share = (load.loadN * weights[node]!) / pushed
    direction.forEach((part, k) => (forces[3 * node + k] = part * share))
  }
  const system = holdPart(level, held)
  const staticShare = wantTones ? 0.5 : 1
  const { moves, steps, rest } = conjugateGradients(system.apply, system.precondition, forces, {
    tolerance: TOLERANCE,
    mostSteps: MOST_STEPS,
    watch: (left) => {
      watch.onProgress?.(staticShare * Math.min(1, Math.log(left) / Math.log(TOLERANCE)))
      return true
    },
  })
  if (!(rest < 0.02)) {
    throw refuse(
      `The sum did not settle: ${(100 * rest).toFixed(0)} % of the load is left after ${steps} steps.`,
      'The part is held by almost nothing, or hangs together by threads. Hold it elsewhere.',
    )
  }
  const along = (node: number): number =>
    direction.reduce((sum, part, k) => sum + part * moves[3 * node + k]!, 0)
  const deflectionMm = pushNodes.reduce((sum, n) => sum + (weights[n]! / pushed) * along(n), 0)
  const stresses = stressesOf(level, moves, solidElastic(laid.plastic), made.solidShare, skip)
  const hz = wantTones ? tonesOf() : []
  const sections = sectionsOf(cells, level, holdNodes, pushNodes, direction)
  return {
    deflectionMm,
    slopeDeg: slopeAtPush(level, holdNodes, pushNodes, direction, along),
    stresses,
    hz,
    line: lineOfMoves(level, holdNodes, pushNodes, weights, along),
    beam: beamOf(sections, laid, { loadN: load.loadN, tipG: load.tipG, massG }),
    sections,
    cells: level.rowOf.length,
    steps,
    gapShare: cells.full > 0 ? cells.gaps / cells.full : 0,
    looseShare,
  }

  function tonesOf(): readonly number[] {
    const all = weights.reduce((sum, weight) => sum + weight, 0)
    const mass = new Float64Array(3 * level.nodes)
    // Tonnes, so that N and mm give seconds.
    weights.forEach((weight, n) => mass.fill((weight / all) * massG * 1e-6, 3 * n, 3 * n + 3))
    for (const node of pushNodes) {
      const tip = (weights[node]! / pushed) * load.tipG * 1e-6
      for (let k = 0; k < 3; k++) mass[3 * node + k]! += tip
    }
    return lowestTones(system, mass, {
      ...TONES,
      watch: (step) => {
        watch.onProgress?.(0.5 + 0.5 * Math.min(1, step / 15))
        return true
      },
    }).hz
  }
}

/** The part as a beam, its rooms taken as full. Throws as `solvePart` does. */
export function sectionPart(
  cells: PartCells,
  load: Pick<LoadCase, 'hold' | 'push' | 'direction'>,
): PartSections | NoBeam {
  const laid = { plastic: SOME_PLASTIC, pattern: 'grid', infill: cells.rooms.map(() => 1) } as const
  const { level, holdNodes, pushNodes } = keepHeld(partGrid(cells, laid), cells.turnDeg, load)
  return sectionsOf(cells, level, holdNodes, pushNodes, turnPoint(load.direction, cells.turnDeg))
}

interface HeldCells {
  readonly level: Level
  readonly looseShare: number
  readonly holdNodes: readonly number[]
  readonly pushNodes: readonly number[]
}

/** The cells that hang together with what is held; the rest would fly off under any load. */
function keepHeld(
  { grid }: PartGrid,
  turnDeg: number,
  { hold, push }: Pick<LoadCase, 'hold' | 'push'>,
): HeldCells {
  const whole = buildLevel(grid)
  const holds = new Set(gripNodes(whole, turnDeg, hold))
  if (holds.size < 3) {
    throw refuse(
      'Nothing of the part lies where it is held.',
      'Choose another place to hold it, or finer cells.',
    )
  }
  const bodies = cellBodies(grid)
  const [nx, ny] = whole.size
  const counts = new Map<number, number>()
  bodies.bodyOf.forEach((body, cell) => {
    if (body === 0) return
    const [x, y, z] = [cell % nx, Math.floor(cell / nx) % ny, Math.floor(cell / (nx * ny))]
    const at = x + (nx + 1) * (y + (ny + 1) * z)
    const touches = holds.has(whole.nodeAt[at]!)
    if (touches) counts.set(body, (counts.get(body) ?? 0) + 1)
  })
  const largest = Math.max(0, ...[...counts.keys()].map((body) => bodies.cells[body]!))
  // A crumb that is held by itself carries nothing.
  const kept = new Set([...counts.keys()].filter((body) => bodies.cells[body]! >= 0.02 * largest))
  const all = bodies.cells.reduce((sum, count) => sum + count, 0)
  const held = [...kept].reduce((sum, body) => sum + bodies.cells[body]!, 0)
  const level =
    kept.size === bodies.cells.length - 1 ? whole : buildLevel(keepBodies(grid, bodies, kept))
  // Ends are those of the whole part, whatever of it is left.
  const numbered = (nodes: Iterable<number>): number[] =>
    level === whole ? [...nodes] : [...nodes].flatMap((node) => sameNode(whole, level, node))
  const pushNodes = numbered(gripNodes(whole, turnDeg, push).filter((node) => !holds.has(node)))
  if (pushNodes.length === 0) {
    throw refuse(
      'What is pushed is what is held, or hangs on nothing that is held.',
      'Choose another place to hold or to push the part; cells that touch along an edge only do not carry.',
    )
  }
  return {
    level,
    looseShare: all > 0 ? 1 - held / all : 0,
    holdNodes: numbered(holds),
    pushNodes,
  }
}

function sameNode({ lineOf, size }: Level, { nodeAt }: Level, node: number): number[] {
  const [x, y, z] = [lineOf[3 * node]!, lineOf[3 * node + 1]!, lineOf[3 * node + 2]!]
  const other = nodeAt[x + (size[0] + 1) * (y + (size[1] + 1) * z)]!
  return other < 0 ? [] : [other]
}

function refuse(message: string, advice: string): PreweighError {
  return new PreweighError('bad-settings', message, advice)
}
