import { Euler, LinearSRGBColorSpace, MathUtils, Quaternion, Vector3, WebGLRenderer } from 'three'
import type { Mesh, Vec3 } from '../core/model/mesh.ts'
import { POSE_AS_DRAWN, type Pose } from '../core/model/settings.ts'
import {
  DIRECTIONS,
  betweenLooks,
  createEye,
  directionOf,
  fitLook,
  placeEye,
  type Direction,
  type Look,
} from './eye.ts'
import { createHands } from './hands.ts'
import { createOverlay } from './overlay.ts'
import { createPace } from './pace.ts'
import { shapePart, turnedBounds, type PartShape } from './partShape.ts'
import { breathe, runInSlices } from './slices.ts'
import { createStage } from './stage.ts'
import type { ViewHandle, ViewName, ViewOptions, ViewTheme } from './types.ts'

const GLIDE_MS = 280
/** How much larger a ringed place is shown than the whole part. */
const NEARER = 1.8

/**
 * The page has one view and one graphics context: browsers drop the oldest of many. Mounting anew
 * ends the former.
 */
let mounted: ViewHandle | null = null

/**
 * Puts a 3D view into a container that has a height of its own. Nothing is drawn unless something
 * changed.
 *
 * Drag turns (one finger sideways on touch), right-drag or two fingers move, wheel zooms once the
 * view has been clicked, arrow keys turn, shift + arrows move, plus and minus zoom, 0 goes back to
 * the first view.
 *
 * @example In React, with the module fetched when the first part is opened:
 * ```tsx
 * const box = useRef<HTMLDivElement>(null) const view = useRef<ViewHandle>(null) useEffect(() => {
 * let gone = false void import('./mountView.ts').then(({ mountView }) => {
 *     if (gone || box.current === null) return
 *     view.current = mountView(box.current, { theme, partName, onError: setProblem })
 *     if (view.current.supported) void view.current.setMesh(mesh, pose)
 * }) return () => { gone = true; view.current?.dispose() } }, [])
 * ```
 */
export function mountView(container: HTMLElement, options: ViewOptions): ViewHandle {
  mounted?.dispose()
  const overlay = createOverlay(options.locale)
  const renderer = createRenderer(overlay.canvas)
  if (renderer === null) {
    options.onError?.({
      code: 'no-graphics',
      message:
        'This browser gives the page no 3D graphics (WebGL 2), so parts are shown as still pictures. ' +
        'All figures are the same.',
    })
    return NO_VIEW
  }
  container.append(overlay.root)
  const handle = startView(overlay, renderer, options, () => {
    if (mounted === handle) mounted = null
  })
  mounted = handle
  return handle
}

const NO_VIEW: ViewHandle = {
  supported: false,
  setMesh: () => Promise.resolve(false),
  setPose() {},
  setTheme() {},
  setPartName() {},
  show() {},
  mark() {},
  dispose() {},
}

function createRenderer(canvas: HTMLCanvasElement): WebGLRenderer | null {
  // Asked for here and not by three, which writes errors to the console where there is none.
  const context = canvas.getContext('webgl2', { alpha: false, antialias: true, stencil: true })
  if (context === null) return null
  const renderer = new WebGLRenderer({ canvas, context })
  renderer.outputColorSpace = LinearSRGBColorSpace
  return renderer
}

type Overlay = ReturnType<typeof createOverlay>

function startView(
  overlay: Overlay,
  renderer: WebGLRenderer,
  options: ViewOptions,
  onGone: () => void,
): ViewHandle {
  const { canvas, root } = overlay
  const stage = createStage()
  const eye = createEye()
  let alive = true
  let lost = false
  let frame = 0
  /** Until then a draw would make the page wait for the shaders. */
  let compiled = false
  const pace = createPace(renderer)
  /** False until the container first has a size; a fit made before that is made again. */
  let sized = false
  /** Rises with every mesh: older work sees that it is no longer wanted. */
  let revision = 0
  let shape: PartShape | null = null
  let placed: Pose = POSE_AS_DRAWN
  let wanted: Pose = POSE_AS_DRAWN
  let ringed: Vec3 | null = null
  let glide: { from: Look; to: Look; start: number } | null = null
  const hands = createHands(eye, canvas, requestDraw, () => show('three-quarter'))

  function requestDraw() {
    if (alive && frame === 0) frame = requestAnimationFrame(drawFrame)
  }

  function drawFrame(now: number) {
    frame = 0
    if (!alive || lost) return
    // Drawing on top of undrawn frames would in the end make the page itself wait for a slow
    // graphics card.
    if (!pace.free()) {
      requestDraw()
      return
    }
    if (glide !== null) {
      const share = MathUtils.clamp((now - glide.start) / GLIDE_MS, 0, 1)
      const eased = MathUtils.smoothstep(share, 0, 1)
      look(betweenLooks(glide.from, glide.to, eased))
      if (share === 1) glide = null
      else requestDraw()
    }
    draw()
  }

  function draw() {
    if (!alive || lost) return
    if (!compiled) {
      // A canvas nothing was drawn on is black.
      renderer.setClearColor(stage.ground())
      renderer.clear()
      return
    }
    eye.updateMatrixWorld()
    const dimensions = stage.faceEye(eye)
    renderer.render(stage.scene, eye)
    overlay.placeDimensions(dimensions, eye)
    overlay.placeScale(eye.zoom)
    overlay.placeRing(ringAt(), eye)
    pace.mark()
  }

  function resize() {
    const { clientWidth: width, clientHeight: height } = root
    if (width === 0 || height === 0) return
    renderer.setPixelRatio(Math.min(devicePixelRatio, 2))
    renderer.setSize(width, height, false)
    const before = Math.min(eye.right, eye.top)
    eye.left = -width / 2
    eye.right = width / 2
    eye.top = height / 2
    eye.bottom = -height / 2
    // A view that grows shows the part larger, not more bed.
    if (sized) eye.zoom *= Math.min(width, height) / 2 / before
    else refit()
    sized = true
    eye.updateProjectionMatrix()
    draw()
  }

  function fit(direction: Direction): Look | null {
    const bounds = stage.bounds()
    return bounds === null ? null : fitLook(bounds, direction, root.clientWidth, root.clientHeight)
  }

  function refit() {
    const next = fit(glide?.to ?? directionOf(eye, hands.target))
    glide = null
    if (next !== null) look(next)
  }

  function look(next: Look) {
    const size = stage.bounds()?.getSize(new Vector3()).length() ?? 100
    hands.target.copy(next.target)
    placeEye(eye, next, size * 2)
    hands.minZoom = next.zoom / 4
    hands.maxZoom = next.zoom * 60
    hands.update()
    requestDraw()
  }

  function ringAt(): Vector3 | null {
    if (ringed === null || shape === null) return null
    return stage.worldOf(new Vector3(...ringed).sub(shape.middle))
  }

  function show(view: ViewName) {
    glideTo(fit(DIRECTIONS[view]))
  }

  function mark(placeMm: Vec3 | null) {
    ringed = placeMm
    const at = ringAt()
    const whole = fit(directionOf(eye, hands.target))
    if (at !== null && whole !== null) glideTo({ ...whole, target: at, zoom: whole.zoom * NEARER })
    requestDraw()
  }

  function glideTo(to: Look | null) {
    if (to === null) return
    const from = { ...directionOf(eye, hands.target), target: hands.target.clone(), zoom: eye.zoom }
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches
    glide = still ? null : { from, to, start: performance.now() }
    if (still) look(to)
    requestDraw()
  }

  /** Stands the part in the wanted pose and fits it, seen from where the eye is. */
  function stand() {
    if (shape === null) return
    const turn = turnOf(wanted).multiply(turnOf(placed).invert())
    stage.stand(turn, turnedBounds(shape, turn))
    const bounds = stage.bounds()
    overlay.setSize(bounds?.getSize(new Vector3()) ?? null, stage.cellMm())
    refit()
  }

  /**
   * Waits until the graphics card has nothing left to do; false when the work is no longer wanted.
   */
  async function free(current: () => boolean): Promise<boolean> {
    while (current() && !lost && !(compiled && pace.free())) await breathe()
    return current()
  }

  async function setMesh(mesh: Mesh | null, pose: Pose = POSE_AS_DRAWN): Promise<boolean> {
    const mine = ++revision
    wanted = pose
    const current = () => alive && mine === revision
    const next = mesh === null || mesh.indices.length === 0 ? null : shapePart(mesh)
    const shaped = next === null ? null : await runInSlices(next, current)
    if (!current()) return false
    shape = shaped
    stage.setPart(shaped)
    if (shaped === null) {
      overlay.setSize(null, 0)
      draw()
      return true
    }
    placed = pose
    stand()
    for (const piece of shaped.pieces) {
      if (!(await free(current))) return false
      stage.addPiece(piece)
      if (piece !== shaped.pieces.at(-1)) draw()
    }
    stage.reveal()
    draw()
    return free(current)
  }

  function onLost(event: Event) {
    event.preventDefault()
    lost = true
    pace.forget()
    options.onError?.({
      code: 'graphics-lost',
      message:
        'The graphics card dropped the 3D view; it comes back by itself when the card is free. ' +
        'Close and open the part if it does not.',
    })
  }

  function onBack() {
    lost = false
    options.onError?.(null)
    requestDraw()
  }

  hands.addEventListener('start', () => (glide = null))
  canvas.addEventListener('webglcontextlost', onLost)
  canvas.addEventListener('webglcontextrestored', onBack)
  const observer = new ResizeObserver(resize)
  observer.observe(root)
  overlay.setPartName(options.partName)
  setTheme(options.theme)
  look(firstLook())
  resize()
  void compile()

  async function compile() {
    await stage.compile(renderer, eye)
    pace.mark()
    while (alive && !pace.free()) await breathe()
    compiled = true
    requestDraw()
  }

  function setTheme(theme: ViewTheme) {
    overlay.setTheme(theme)
    stage.setTheme(theme)
    requestDraw()
  }

  return {
    supported: true,
    setMesh,
    setPose(pose) {
      wanted = pose
      stand()
    },
    setTheme,
    setPartName: (name) => overlay.setPartName(name),
    show,
    mark,
    dispose() {
      if (!alive) return
      alive = false
      cancelAnimationFrame(frame)
      observer.disconnect()
      canvas.removeEventListener('webglcontextlost', onLost)
      canvas.removeEventListener('webglcontextrestored', onBack)
      hands.dispose()
      stage.dispose()
      renderer.dispose()
      renderer.forceContextLoss()
      root.remove()
      onGone()
    },
  }
}

/** Over an empty bed, until a part comes. */
function firstLook(): Look {
  return { ...DIRECTIONS['three-quarter'], target: new Vector3(), zoom: 3 }
}

/** About x, then y, then z, as core/mesh/pose.ts does. */
function turnOf({ rotateDeg: [x, y, z] }: Pose): Quaternion {
  const [rx, ry, rz] = [x, y, z].map(MathUtils.degToRad) as [number, number, number]
  return new Quaternion().setFromEuler(new Euler(rx, ry, rz, 'ZYX'))
}
