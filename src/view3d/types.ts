import type { Mesh, Vec3 } from '../core/model/mesh.ts'
import type { Pose } from '../core/model/settings.ts'

export type ViewTheme = 'light' | 'dark'

/**
 * Points of view the page offers as buttons. Front looks along +y, side looks along −x, top looks
 * down.
 */
export type ViewName = 'three-quarter' | 'top' | 'front' | 'side'

export interface ViewOptions {
  readonly theme: ViewTheme
  /** Named to people who do not see the picture: "3D view of <partName>". */
  readonly partName: string
  /** Locale of the numbers; the browser's own when absent. */
  readonly locale?: string
  /** Called when the picture is lost, and with null once it is back. */
  readonly onError?: (problem: ViewProblem | null) => void
}

export interface ViewProblem {
  readonly code: 'no-graphics' | 'graphics-lost'
  /** A whole sentence for the user, with what to do. */
  readonly message: string
}

export interface ViewHandle {
  /**
   * False where the browser gives no WebGL 2: the container stays empty, every method is a no-op.
   * Show a large thumbnail.
   */
  readonly supported: boolean
  /**
   * Shows a part, or an empty bed for null. The mesh is in mm, placed in `pose` (as drawn when
   * absent); it is read in short slices over several frames and must not be changed or transferred
   * before the promise settles. Resolves true once the part is on screen, false when another mesh
   * or `dispose` came first.
   */
  setMesh(mesh: Mesh | null, pose?: Pose): Promise<boolean>
  /** Turns the shown part to another pose at once, as a preview; no new mesh is needed. */
  setPose(pose: Pose): void
  setTheme(theme: ViewTheme): void
  setPartName(name: string): void
  /**
   * Turns to a point of view and fits the part; glides there unless the user prefers reduced
   * motion.
   */
  show(view: ViewName): void
  /**
   * Rings a place of the part as it was given to `setMesh`, mm, and turns to it; null takes the
   * ring off.
   */
  mark(placeMm: Vec3 | null): void
  /** Frees everything, the graphics context too, and empties the container. Safe to call twice. */
  dispose(): void
}
