import {
  BufferGeometry,
  Group,
  LineSegments,
  Mesh as Solid,
  Scene,
  Vector3,
  type Box3,
  type Color,
  type OrthographicCamera,
  type Quaternion,
  type WebGLRenderer,
} from 'three'
import { layBed } from './bed.ts'
import { createDimensionLines, drawDimensions, type Dimension } from './dimensions.ts'
import { createMaterials, paintMaterials } from './materials.ts'
import { PALETTES } from './palette.ts'
import type { PartShape } from './partShape.ts'
import type { ViewTheme } from './types.ts'

/** Beyond this many vertices the part throws no shadow: it would be drawn twice a frame. */
const SHADOW_UP_TO_VERTICES = 600_000

/**
 * What stands on the bed, and the bed. Knows nothing of the page, the eye or the renderer's life.
 */
export interface Stage {
  readonly scene: Scene
  setTheme(theme: ViewTheme): void
  /**
   * Takes the old part off and readies a new one; its pieces then come one at a time. Null clears
   * the bed.
   */
  setPart(shape: PartShape | null): void
  /**
   * Drawn as one triangle for now: enough to carry its data to the graphics card, and nothing is
   * drawn twice.
   */
  addPiece(geometry: BufferGeometry): void
  /** Shows all pieces. */
  reveal(): void
  /**
   * Turns the part and stands it on the middle of the bed; `turned` are its bounds then, about its
   * own middle.
   */
  stand(turn: Quaternion, turned: Box3): void
  /** Readies what depends on the eye; returns the dimensions that have room. */
  faceEye(eye: OrthographicCamera): readonly Dimension[]
  /** Bounds of the standing part, or null. */
  readonly bounds: () => Box3 | null
  /** Where a point of the part stands, from its place about the part's own middle. */
  readonly worldOf: (local: Vector3) => Vector3
  readonly cellMm: () => number
  readonly ground: () => Color
  /** Readies every shader before the first draw, in the background where the browser can. */
  compile(renderer: WebGLRenderer, eye: OrthographicCamera): Promise<void>
  dispose(): void
}

export function createStage(): Stage {
  const materials = createMaterials()
  const scene = new Scene()
  const part = new Group()
  const shadow = new Group()
  const bedFine = new LineSegments(new BufferGeometry(), materials.gridFine)
  const bedBold = new LineSegments(new BufferGeometry(), materials.gridBold)
  const dimensions = new LineSegments(createDimensionLines(), materials.dimension)
  // The bed lies below everything, whatever the depths say: the shadow and the resting face are in
  // its plane.
  bedFine.renderOrder = -3
  bedBold.renderOrder = -2
  shadow.renderOrder = -1
  materials.gridFine.depthWrite = false
  materials.gridBold.depthWrite = false
  for (const object of [bedFine, bedBold, dimensions]) object.frustumCulled = false
  scene.add(bedFine, bedBold, shadow, part, dimensions)

  let shape: PartShape | null = null
  let bounds: Box3 | null = null
  let cellMm = 10
  let ground = PALETTES.light.ground

  const layUnder = (width: number, depth: number) => {
    bedFine.geometry.dispose()
    bedBold.geometry.dispose()
    const bed = layBed(width, depth)
    bedFine.geometry = bed.fine
    bedBold.geometry = bed.bold
    cellMm = bed.cellMm
  }
  const clear = () => {
    for (const geometry of shape?.pieces ?? []) geometry.dispose()
    shape?.edges?.dispose()
    part.clear()
    shadow.clear()
    shape = null
    bounds = null
    dimensions.geometry.setDrawRange(0, 0)
  }
  layUnder(100, 100)

  return {
    scene,
    setTheme(theme) {
      const palette = PALETTES[theme]
      ground = palette.ground
      scene.background = ground
      paintMaterials(materials, palette)
    },
    setPart(next) {
      clear()
      shape = next
      if (next === null || next.edges === null) return
      const edges = new LineSegments(next.edges, materials.edge)
      edges.frustumCulled = false
      part.add(edges)
    },
    addPiece(geometry) {
      geometry.setDrawRange(0, 3)
      const solid = new Solid(geometry, materials.part)
      solid.frustumCulled = false
      part.add(solid)
      if ((shape?.positions.length ?? 0) / 3 > SHADOW_UP_TO_VERTICES) return
      const thrown = new Solid(geometry, materials.shadow)
      thrown.frustumCulled = false
      thrown.renderOrder = -1
      shadow.add(thrown)
    },
    reveal() {
      for (const geometry of shape?.pieces ?? []) geometry.setDrawRange(0, Infinity)
    },
    stand(turn, turned) {
      const middle = turned.getCenter(new Vector3())
      const onBed = new Vector3(-middle.x, -middle.y, -turned.min.z)
      for (const object of [part, shadow]) {
        object.quaternion.copy(turn)
        object.position.copy(onBed)
        object.updateMatrixWorld(true)
      }
      bounds = turned.clone().translate(onBed)
      const size = bounds.getSize(new Vector3())
      layUnder(size.x, size.y)
    },
    faceEye(eye) {
      const above = new Vector3().setFromMatrixColumn(eye.matrixWorld, 2).z > 0
      shadow.visible = above
      return bounds === null ? [] : drawDimensions(dimensions.geometry, bounds, eye)
    },
    bounds: () => bounds,
    worldOf: (local) => part.localToWorld(local.clone()),
    cellMm: () => cellMm,
    ground: () => ground,
    async compile(renderer, eye) {
      const samples = new Group()
      const nothing = new BufferGeometry()
      samples.add(new Solid(nothing, materials.part), new Solid(nothing, materials.shadow))
      samples.add(new LineSegments(nothing, materials.edge))
      // Where the browser compiles in the background only by itself, three would warn and not wait.
      if (renderer.extensions.has('KHR_parallel_shader_compile')) {
        await renderer.compileAsync(samples, eye, scene)
      } else {
        renderer.compile(samples, eye, scene)
      }
    },
    dispose() {
      clear()
      for (const object of [bedFine, bedBold, dimensions]) object.geometry.dispose()
      for (const material of Object.values(materials)) material.dispose()
    },
  }
}
