import { MOUSE, TOUCH, type OrthographicCamera } from 'three'
import { OrbitControls } from 'three/addons/controls/OrbitControls.js'

/** One press of an arrow key. */
const KEY_TURN = Math.PI / 24
const KEY_PAN_PX = 24
const KEY_ZOOM = 1.2

/**
 * Lets mouse, touch and keyboard turn the eye. `onMove` follows every change, `onReset` the key
 * that goes back.
 */
export function createHands(
  eye: OrthographicCamera,
  canvas: HTMLCanvasElement,
  onMove: () => void,
  onReset: () => void,
): OrbitControls {
  const hands = new OrbitControls(eye, canvas)
  // No damping: a view that coasts would have to draw on after the hand stops.
  hands.enableDamping = false
  hands.zoomToCursor = true
  hands.mouseButtons = { LEFT: MOUSE.ROTATE, MIDDLE: MOUSE.DOLLY, RIGHT: MOUSE.PAN }
  hands.touches = { ONE: TOUCH.ROTATE, TWO: TOUCH.DOLLY_PAN }
  hands.addEventListener('change', onMove)
  // One finger up or down still scrolls the page, or a phone could not get past the view.
  canvas.style.touchAction = 'pan-y'

  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const act = event.shiftKey ? panKeys(hands)[event.key] : turnKeys(hands, onReset)[event.key]
    if (act === undefined) return
    event.preventDefault()
    act()
  }
  // The wheel scrolls the page until the view has been clicked; a pinch on a trackpad (ctrl) always
  // zooms.
  const wheel = (event: WheelEvent) => {
    if (!event.ctrlKey && document.activeElement !== canvas) event.stopImmediatePropagation()
  }
  const press = () => canvas.focus({ preventScroll: true })
  canvas.addEventListener('keydown', keys)
  canvas.addEventListener('wheel', wheel, { capture: true, passive: true })
  canvas.addEventListener('pointerdown', press)
  return hands
}

type Acts = Readonly<Record<string, (() => void) | undefined>>

function turnKeys(hands: OrbitControls, onReset: () => void): Acts {
  return {
    ArrowLeft: () => hands.rotateLeft(-KEY_TURN),
    ArrowRight: () => hands.rotateLeft(KEY_TURN),
    ArrowUp: () => hands.rotateUp(KEY_TURN),
    ArrowDown: () => hands.rotateUp(-KEY_TURN),
    '+': () => hands.dollyIn(1 / KEY_ZOOM),
    '=': () => hands.dollyIn(1 / KEY_ZOOM),
    '-': () => hands.dollyOut(1 / KEY_ZOOM),
    '0': onReset,
    Home: onReset,
  }
}

function panKeys(hands: OrbitControls): Acts {
  return {
    ArrowLeft: () => hands.pan(KEY_PAN_PX, 0),
    ArrowRight: () => hands.pan(-KEY_PAN_PX, 0),
    ArrowUp: () => hands.pan(0, KEY_PAN_PX),
    ArrowDown: () => hands.pan(0, -KEY_PAN_PX),
    // On most keyboards plus is shift and something.
    '+': () => hands.dollyIn(1 / KEY_ZOOM),
  }
}
