import type { LayerPlan } from '../../census/cut/layerPlan.ts'
import { layingOf } from '../../census/areas/laying.ts'
import { skinReachOf } from '../../census/areas/skinReach.ts'
import type { Mesh } from '../../model/mesh.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import type { SolidGrid } from '../solid/types.ts'

/** Faces this small beside the largest that look the same way get no line of their own. */
const LEAST_FACE = 0.03
/** Lines nearer to a more important one are left out. mm */
const NEAREST_MM = 0.3
/** A gap between lines is cut into cells up to so many times the size that is wanted. */
const STRETCH = 1.3
/** More than a worker should hold. */
const MOST_CELLS = 1_500_000

/**
 * Grid lines of a part: through its flat faces, the inner edges of their walls and the ends of its
 * skins, so that a wall is one cell and all of it, with cells of about `cellMm` between them. Where
 * walls lie is decisive: smeared over cells of 1 mm, walls of 1.6 mm twist 3 to 9 % too soft and
 * give way locally by 40 % too much.
 *
 * @param mesh placed (mm, lowest z at 0), in the grid's frame.
 */
export function planLines(
  mesh: Mesh,
  plan: LayerPlan,
  settings: GeometrySettings,
  cellMm: number,
): SolidGrid['linesMm'] {
  const faces = facesOf(mesh)
  const { wallMm } = layingOf(settings, settings.layerMm, false)
  const { above, under } = skinReachOf(settings)
  const tops = layerTops(plan)
  const heightMm = tops.at(-1)!
  const toLayer = (z: number): number =>
    tops.reduce((best, top) => (Math.abs(top - z) < Math.abs(best - z) ? top : best), 0)
  const sides = ([0, 1] as const).map((k) => {
    const [low, high] = faces.ends[k]!
    const wanted = faces.flat[k]!.flatMap(({ at, outward, area }) => [
      { at, weight: area },
      { at: at - outward * wallMm, weight: area * 0.5 },
    ])
    return { low, high, wanted }
  })
  const upright = {
    low: 0,
    high: heightMm,
    wanted: faces.flat[2]!.flatMap(({ at, outward, area }) => {
      const face = toLayer(at)
      const skins = outward > 0 ? above : under
      return [
        { at: face, weight: area },
        { at: face - outward * skins * settings.layerMm, weight: area * 0.5 },
      ]
    }),
  }
  for (let size = cellMm; ; size *= 1.26) {
    const lines = [...sides, upright].map((axis) => fillLines(axis, size))
    const cells = lines.reduce((product, { length }) => product * (length - 1), 1)
    if (cells <= MOST_CELLS) return lines as unknown as SolidGrid['linesMm']
  }
}

/** Tops of the layers, from the bed on. */
function layerTops({ heightMm }: LayerPlan): number[] {
  let at = 0
  return [0, ...Array.from(heightMm, (height) => (at += height))]
}

interface WantedLines {
  readonly low: number
  readonly high: number
  readonly wanted: readonly { readonly at: number; readonly weight: number }[]
}

function fillLines({ low, high, wanted }: WantedLines, cellMm: number): Float64Array {
  const most = wanted.reduce((sum, { weight }) => Math.max(sum, weight), 0)
  const kept = [low, high]
  for (const { at, weight } of wanted.toSorted((a, b) => b.weight - a.weight)) {
    if (weight < LEAST_FACE * most || at <= low || at >= high) continue
    if (kept.every((other) => Math.abs(other - at) >= NEAREST_MM)) kept.push(at)
  }
  kept.sort((a, b) => a - b)
  const lines = [low]
  for (let i = 1; i < kept.length; i++) {
    const from = kept[i - 1]!
    const gap = kept[i]! - from
    const cells = Math.max(1, Math.ceil(gap / (cellMm * STRETCH)))
    for (let k = 1; k <= cells; k++) lines.push(k === cells ? kept[i]! : from + (gap * k) / cells)
  }
  return Float64Array.from(lines)
}

interface FlatFace {
  readonly at: number
  readonly outward: 1 | -1
  area: number
}

/** Flat faces across each axis, and the part's ends on it. */
function facesOf({ positions, indices }: Mesh) {
  const ends = [0, 1, 2].map(() => [Infinity, -Infinity] as [number, number])
  const byPlace = [0, 1, 2].map(() => new Map<number, FlatFace>())
  for (let i = 0; i < indices.length; i += 3) {
    const corners = [3 * indices[i]!, 3 * indices[i + 1]!, 3 * indices[i + 2]!] as const
    for (let k = 0; k < 3; k++) {
      for (const corner of corners) {
        const at = positions[corner + k]!
        if (at < ends[k]![0]) ends[k]![0] = at
        if (at > ends[k]![1]) ends[k]![1] = at
      }
    }
    const normal = crossOf(positions, corners)
    const size = Math.hypot(...normal)
    const axis = normal.findIndex((part) => Math.abs(part) > 0.9995 * size)
    if (!(size > 0) || axis < 0) continue
    const at = positions[corners[0] + axis]!
    const outward = normal[axis]! > 0 ? 1 : -1
    const key = Math.round(at * 50) * outward + (outward > 0 ? 0.25 : -0.25)
    const known = byPlace[axis]!.get(key)
    if (known === undefined) byPlace[axis]!.set(key, { at, outward, area: size / 2 })
    else known.area += size / 2
  }
  return { ends, flat: byPlace.map((faces) => [...faces.values()]) }
}

function crossOf(
  at: Mesh['positions'],
  [a, b, c]: readonly [number, number, number],
): [number, number, number] {
  const [ux, uy, uz] = [at[b]! - at[a]!, at[b + 1]! - at[a + 1]!, at[b + 2]! - at[a + 2]!]
  const [vx, vy, vz] = [at[c]! - at[a]!, at[c + 1]! - at[a + 1]!, at[c + 2]! - at[a + 2]!]
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx]
}
