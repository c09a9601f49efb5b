import type { Elastic } from '../moduli/elastic.ts'
import { infillElastic, solidElastic } from '../moduli/printedModuli.ts'
import type { Laid } from './partGrid.ts'
import type { NoBeam, PartSections } from './sections.ts'

/** What a part would give as a beam of its own sections, beside the solid model. */
export interface BeamGives {
  readonly kind: 'beam'
  readonly deflectionMm: number
  /** First tone the way it is pushed; null without a mass. Hz */
  readonly firstHz: number | null
}

export type BeamSays = BeamGives | NoBeam

export interface BeamLoad {
  readonly loadN: number
  /** Of the whole piece, supports off; spread as its plastic is. g */
  readonly massG: number
  /** What sits where it is pushed. g */
  readonly tipG: number
  /** Length that swings, up to what is pushed; left out, from what is held on. mm */
  readonly freeMm?: number
}

/** Shear area over area, of a full rectangle (Timoshenko); webs carry most of a hollow one's. */
const SHEAR = 5 / 6
/** Rounds of inverse iteration; each divides what is left of the second tone by at least six. */
const ROUNDS = 6

/**
 * A part held at one end and pushed across at the other as a beam: each slice a transformed section
 * with its own neutral axis (Gere and Timoshenko, Mechanics of Materials), F x² / E I and F / k G A
 * summed along it; its first tone by A. Stodola's iteration from the same flexibility (Den Hartog,
 * Mechanical Vibrations). Sections that twist, jump or are held softly are not seen.
 */
export function beamOf(sections: PartSections | NoBeam, laid: Laid, load: BeamLoad): BeamSays {
  if (sections.kind === 'no') return sections
  const stations = stationsOf(sections, laid, load)
  if (stations === null) return { kind: 'no', why: 'it is parted along its length' }
  const { spanMm } = sections
  let sum = 0
  for (const { fromMm, toMm, bending, shear } of stations) {
    if (fromMm >= spanMm) break
    // Moments are straight over a slice: the square of the arm is integrated exactly.
    sum += ((spanMm - fromMm) ** 3 - (spanMm - toMm) ** 3) / (3 * bending) + (toMm - fromMm) / shear
  }
  return {
    kind: 'beam',
    deflectionMm: load.loadN * sum,
    firstHz: load.massG + load.tipG > 0 ? toneOf(stations, spanMm, load.tipG) : null,
  }
}

/** A slice that is free to move. */
interface Station {
  readonly fromMm: number
  readonly toMm: number
  /** E I, N·mm². */
  readonly bending: number
  /** k G A, N. */
  readonly shear: number
  /** Tonnes, so that N and mm give seconds. */
  readonly massT: number
}

/** Free slices, cut where it is pushed; null where one of them carries nothing. */
function stationsOf(
  { along, across, turnDeg, spanMm, slices }: PartSections,
  { plastic, pattern, infill }: Laid,
  { massG, freeMm }: BeamLoad,
): readonly Station[] | null {
  const made = [
    solidElastic(plastic),
    ...infill.map((share) => infillElastic(pattern, share, plastic, turnDeg)),
  ]
  const youngs = made.map((elastic) => (elastic === null ? 0 : youngsAlong(elastic, along)))
  const shears = made.map((elastic) => (elastic === null ? 0 : shearOf(elastic, along, across)))
  const shares = [1, ...infill]
  const plasticIn = slices.map(({ fromMm, toMm, parts }) =>
    parts.reduce((all, [area], k) => all + (shares[k] ?? 0) * area * (toMm - fromMm), 0),
  )
  const perMm3 = (massG * 1e-6) / plasticIn.reduce((a, b) => a + b, 0)
  const start = freeMm === undefined ? 0 : spanMm - freeMm
  const stations: Station[] = []
  for (const [i, { fromMm, toMm, parts }] of slices.entries()) {
    const low = Math.max(fromMm, start)
    if (!(toMm - low > 1e-9)) continue
    let [ea, first, second, ga] = [0, 0, 0, 0]
    for (const [k, [area, firstMm3, secondMm4]] of parts.entries()) {
      const e = youngs[k] ?? 0
      ea += e * area
      first += e * firstMm3
      second += e * secondMm4
      ga += (shears[k] ?? 0) * area
    }
    const bending = ea > 0 ? second - first ** 2 / ea : 0
    const isLoaded = low < spanMm
    if (isLoaded && !(bending > 0)) return null
    const ends = low < spanMm && spanMm < toMm ? [low, spanMm, toMm] : [low, toMm]
    for (let end = 1; end < ends.length; end++) {
      const [a, b] = [ends[end - 1]!, ends[end]!]
      const massT = (perMm3 * plasticIn[i]! * (b - a)) / (toMm - fromMm)
      stations.push({ fromMm: a, toMm: b, bending, shear: SHEAR * ga, massT })
    }
  }
  return stations
}

/** Lumps at the ends of the slices; what lies beyond the push swings on without bending. */
function toneOf(stations: readonly Station[], spanMm: number, tipG: number): number {
  const at = [stations[0]!.fromMm, ...stations.map(({ toMm }) => toMm)]
  const lumps = at.map((_, i) => (lumpOf(stations[i - 1]) + lumpOf(stations[i])) / 2)
  const tip = at.findIndex((x) => x >= spanMm - 1e-9)
  lumps[tip]! += tipG * 1e-6
  let shape = at.map((x) => (x - at[0]!) ** 2)
  let square = 0
  for (let round = 0; round < ROUNDS; round++) {
    const forces = shape.map((w, i) => lumps[i]! * w)
    const next = movedBy(stations, at, forces)
    const work = forces.reduce((sum, force, i) => sum + force * next[i]!, 0)
    const swing = next.reduce((sum, w, i) => sum + lumps[i]! * w ** 2, 0)
    square = work / swing
    const largest = Math.max(...next.map(Math.abs))
    shape = next.map((w) => w / largest)
  }
  return Math.sqrt(square) / (2 * Math.PI)
}

const lumpOf = (station: Station | undefined): number => station?.massT ?? 0

/** How a beam held at its first end moves under forces at the ends of its slices. */
function movedBy(
  stations: readonly Station[],
  at: readonly number[],
  forces: readonly number[],
): number[] {
  const count = at.length
  const pull = new Float64Array(count)
  const moment = new Float64Array(count)
  for (let i = count - 2; i >= 0; i--) {
    pull[i] = pull[i + 1]! + forces[i + 1]!
    moment[i] = moment[i + 1]! + pull[i]! * (at[i + 1]! - at[i]!)
  }
  const moves = [0]
  let slope = 0
  for (const [i, { bending, shear }] of stations.entries()) {
    const long = at[i + 1]! - at[i]!
    const [near, far] = [moment[i]!, moment[i + 1]!]
    const bent = bending > 0 ? (long ** 2 * (2 * near + far)) / (6 * bending) : 0
    const sheared = shear > 0 ? (pull[i]! * long) / shear : 0
    moves.push(moves[i]! + slope * long + bent + sheared)
    if (bending > 0) slope += (long * (near + far)) / (2 * bending)
  }
  return moves
}

/**
 * Young's modulus along an axis, from the stiffnesses: what is left with both others free to give.
 */
function youngsAlong({ c11, c22, c33, c12, c13, c23 }: Elastic, k: 0 | 1 | 2): number {
  const whole =
    c11 * (c22 * c33 - c23 * c23) - c12 * (c12 * c33 - c23 * c13) + c13 * (c12 * c23 - c22 * c13)
  const minor = [c22 * c33 - c23 * c23, c11 * c33 - c13 * c13, c11 * c22 - c12 * c12][k]!
  return whole / minor
}

function shearOf({ g12, g13, g23 }: Elastic, a: number, b: number): number {
  return [g12, g13, g23][a + b - 1]!
}
