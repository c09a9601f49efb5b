import { OrthographicCamera, Vector3, type Box3 } from 'three'
import { THREE_QUARTER } from '../core/mesh/thumbnail.ts'
import type { ViewName } from './types.ts'

/**
 * Where the eye is: degrees round the bed from the front towards the right, degrees above the bed.
 */
export interface Direction {
  readonly azimuthDeg: number
  readonly elevationDeg: number
}

/**
 * Straight above has no "round": stay a hair short of it, so that the picture keeps x to the right.
 */
const ALMOST_ABOVE_DEG = 89.99

export const DIRECTIONS: Readonly<Record<ViewName, Direction>> = {
  'three-quarter': THREE_QUARTER,
  top: { azimuthDeg: 0, elevationDeg: ALMOST_ABOVE_DEG },
  front: { azimuthDeg: 0, elevationDeg: 0 },
  side: { azimuthDeg: 90, elevationDeg: 0 },
}

/** What the eye looks at and how large: `zoom` is screen pixels a mm. */
export interface Look extends Direction {
  readonly target: Vector3
  readonly zoom: number
}

/** Pixels kept free round the part for its dimensions, the caption and the scale. */
const FREE_PX = { side: 56, top: 28, bottom: 68 }

/** A parallel projection: what is drawn has one scale, so a scale bar tells the truth. */
export function createEye(): OrthographicCamera {
  const eye = new OrthographicCamera()
  eye.up.set(0, 0, 1)
  return eye
}

/** Fits a box on the bed into a picture of width × height pixels, seen from a direction. */
export function fitLook(box: Box3, direction: Direction, width: number, height: number): Look {
  const { right, up } = axesOf(direction)
  let across = 0
  let along = 0
  const half = box.getSize(new Vector3()).multiplyScalar(0.5)
  for (const k of ['x', 'y', 'z'] as const) {
    across += Math.abs(right[k]) * half[k]
    along += Math.abs(up[k]) * half[k]
  }
  const zoomX = Math.max(40, width - 2 * FREE_PX.side) / (2 * across)
  const zoomY = Math.max(40, height - FREE_PX.top - FREE_PX.bottom) / (2 * along)
  const zoom = Math.min(zoomX, zoomY)
  // The free rim below is wider than above: look a little under the middle.
  const lower = (FREE_PX.bottom - FREE_PX.top) / 2 / zoom
  const target = box.getCenter(new Vector3()).addScaledVector(up, -lower)
  return { ...direction, target, zoom: Number.isFinite(zoom) ? zoom : 1 }
}

function axesOf({ azimuthDeg, elevationDeg }: Direction) {
  const az = (azimuthDeg * Math.PI) / 180
  const el = (elevationDeg * Math.PI) / 180
  return {
    right: new Vector3(Math.cos(az), Math.sin(az), 0),
    up: new Vector3(-Math.sin(az) * Math.sin(el), Math.cos(az) * Math.sin(el), Math.cos(el)),
    towardsEye: new Vector3(
      Math.sin(az) * Math.cos(el),
      -Math.cos(az) * Math.cos(el),
      Math.sin(el),
    ),
  }
}

/** Moves the eye; `reachMm` is the radius that must stay in front of it and within its depth. */
export function placeEye(eye: OrthographicCamera, look: Look, reachMm: number): void {
  eye.position.copy(look.target).addScaledVector(axesOf(look).towardsEye, reachMm * 6)
  eye.near = 0
  eye.far = reachMm * 12
  eye.zoom = look.zoom
  eye.lookAt(look.target)
  eye.updateProjectionMatrix()
}

/** Where the eye looks from now, after the user turned it. */
export function directionOf(eye: OrthographicCamera, target: Vector3): Direction {
  const away = eye.position.clone().sub(target)
  const level = Math.hypot(away.x, away.y)
  return {
    azimuthDeg: (Math.atan2(away.x, -away.y) * 180) / Math.PI,
    elevationDeg: (Math.atan2(away.z, level) * 180) / Math.PI,
  }
}

/** Between two looks, the short way round; `share` 0–1. */
export function betweenLooks(from: Look, to: Look, share: number): Look {
  const round = ((((to.azimuthDeg - from.azimuthDeg) % 360) + 540) % 360) - 180
  return {
    azimuthDeg: from.azimuthDeg + round * share,
    elevationDeg: from.elevationDeg + (to.elevationDeg - from.elevationDeg) * share,
    target: from.target.clone().lerp(to.target, share),
    zoom: from.zoom * (to.zoom / from.zoom) ** share,
  }
}
