import type { View } from './types.ts'

/** The views of one part as it lies on the bed: x to the right, y away from the eye. */
export const PART_VIEWS = {
  slant: { azimuthDeg: -34, elevationDeg: 28 },
  top: { azimuthDeg: 0, elevationDeg: 90 },
  front: { azimuthDeg: 0, elevationDeg: 0 },
  side: { azimuthDeg: 90, elevationDeg: 0 },
  below: { azimuthDeg: -34, elevationDeg: -28 },
} as const satisfies Record<string, View>
