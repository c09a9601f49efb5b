import type { DrawnPlace, Place } from '../../model/aircraft.ts'
import type { Part } from '../../model/frame.ts'
import { turnMatrix } from '../pose.ts'
import type { Nine } from '../pose.ts'
import { after, mapPoint, type RigidMap } from '../rigidMaps.ts'
import type { Vec3 } from '../../model/mesh.ts'
import { unitToMm } from '../../model/units.ts'

/**
 * The place that does what the map does. Rounding of the turn costs nothing at `about`, a point in
 * the middle of the piece: that one lands exactly where the map takes it.
 */
export function drawnPlaceOf(map: RigidMap, about: Vec3): DrawnPlace {
  const m = map.matrix
  const mirrored = determinant(m) < 0
  // Mirrored first in x, so that M = turn · diag(−1, 1, 1).
  const side = mirrored ? -1 : 1
  const rotateDeg = turnOf([
    side * m[0],
    m[1],
    m[2],
    side * m[3],
    m[4],
    m[5],
    side * m[6],
    m[7],
    m[8],
  ])
  const place = { position: [0, 0, 0], rotateDeg, mirrored } as const
  const [wantedX, wantedY, wantedZ] = mapPoint(map, about)
  const [x, y, z] = mapPoint(placeMap(place), about)
  return {
    position: [tidy(wantedX - x), tidy(wantedY - y), tidy(wantedZ - z)],
    rotateDeg,
    mirrored,
  }
}

/** What a place does to the points of a piece. */
export function placeMap({ position, rotateDeg, mirrored }: DrawnPlace): RigidMap {
  const [a, b, c, d, e, f, g, h, i] = turnMatrix({ rotateDeg })
  const side = mirrored ? -1 : 1
  return { matrix: [side * a, b, c, side * d, e, f, side * g, h, i], move: position }
}

/** The same of a place on the aircraft. mm */
export function motionOfPlace({ positionMm, rotateDeg, mirrored }: Place): RigidMap {
  return placeMap({ position: positionMm, rotateDeg, mirrored })
}

/** Places of a piece inside a group that is itself placed: every inner place in every outer one. */
export function nestPlaces(
  outer: readonly DrawnPlace[],
  inner: readonly DrawnPlace[],
): readonly DrawnPlace[] {
  return outer.flatMap((group) => {
    const big = placeMap(group)
    return inner.map((piece): DrawnPlace => {
      return drawnPlaceOf(after(big, placeMap(piece)), [0, 0, 0])
    })
  })
}

/** Which way of the file's axes is forward on the aircraft. */
export type FileNose = 'x' | '-x' | 'y' | '-y'

const NOSE_DEG: Readonly<Record<FileNose, number>> = { x: 0, y: -90, '-x': 180, '-y': 90 }

/**
 * Places of all parts whose file says where their pieces go, as many as fly. The file's axes are
 * turned so that `nose` comes to point forward (+x), about `middleMm`, the point of the file that
 * becomes the middle of the aircraft.
 */
export function placesAsDrawn(
  parts: readonly Pick<Part, 'id' | 'unit' | 'quantity' | 'drawnPlaces'>[],
  nose: FileNose = 'x',
  middleMm: Vec3 = [0, 0, 0],
): readonly Place[] {
  const turnDeg = NOSE_DEG[nose]
  const turn: RigidMap = {
    matrix: turnMatrix({ rotateDeg: [0, 0, turnDeg] }),
    move: [0, 0, 0],
  }
  return parts.flatMap(({ id, unit, quantity, drawnPlaces = [] }) => {
    const mm = unitToMm(unit)
    return drawnPlaces.slice(0, quantity).map((drawn): Place => {
      const [x, y, z] = drawn.position
      const [turnX, turnY, turnZ] = drawn.rotateDeg
      return {
        partId: id,
        positionMm: mapPoint(turn, [
          x * mm - middleMm[0],
          y * mm - middleMm[1],
          z * mm - middleMm[2],
        ]),
        // The turn about z comes last anyway.
        rotateDeg: [turnX, turnY, turnZ + turnDeg],
        mirrored: drawn.mirrored,
      }
    })
  })
}

/**
 * Angles about x, then y, then z of a turn (see `turnMatrix`), degrees. Where y stands at ±90° x
 * and z do the same, and the arctangents are taken so that their errors cancel.
 */
function turnOf([, r01, r02, , r11, r12, r20, r21, r22]: Nine): Vec3 {
  const x = Math.atan2(r21, r22)
  const y = Math.atan2(-r20, Math.hypot(r21, r22))
  const [sine, cosine] = [Math.sin(x), Math.cos(x)]
  const z = Math.atan2(sine * r02 - cosine * r01, cosine * r11 - sine * r12)
  return [degrees(x), degrees(y), degrees(z)]
}

function degrees(radians: number): number {
  return tidy((radians * 180) / Math.PI)
}

/**
 * Rounded to 1e-10, so that a quarter turn is one and a shift by 4 is 4. Adding 0 turns −0 into 0.
 */
function tidy(value: number): number {
  return Math.round(value * 1e10) / 1e10 + 0
}

function determinant([a, b, c, d, e, f, g, h, i]: Nine): number {
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
}
