import type { Vec3 } from '../model/mesh.ts'
import type { View } from './types.ts'

/** Unit vectors of a view in the frame's axes: to the right, up the sheet, towards the eye. */
export interface ViewAxes {
  readonly right: Vec3
  readonly up: Vec3
  readonly toEye: Vec3
}

/** The views a set of drawings has, first angle: nose left in plan and side view. */
export const VIEWS = {
  slant: { azimuthDeg: 146, elevationDeg: 28 },
  top: { azimuthDeg: 180, elevationDeg: 90 },
  front: { azimuthDeg: 90, elevationDeg: 0 },
  side: { azimuthDeg: 180, elevationDeg: 0 },
} as const satisfies Record<string, View>

export function viewAxes({ azimuthDeg, elevationDeg }: View): ViewAxes {
  const az = (azimuthDeg * Math.PI) / 180
  const el = (elevationDeg * Math.PI) / 180
  const [sinA, cosA, sinE, cosE] = [Math.sin(az), Math.cos(az), Math.sin(el), Math.cos(el)]
  return {
    right: [cosA, sinA, 0],
    up: [-sinE * sinA, sinE * cosA, cosE],
    toEye: [cosE * sinA, -cosE * cosA, sinE],
  }
}
