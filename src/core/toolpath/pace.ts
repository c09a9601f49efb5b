import { moveTime } from '../figures/kinematics.ts'

/** How the printer moves where the file does not say. */
export interface PaceMotion {
  readonly accelMmS2: number
  readonly wallAccelMmS2: number
  readonly travelAccelMmS2: number
  /** Speed a right angle is taken at. */
  readonly cornerMmS: number
}

/** Adds up the time of moves in their order. */
export interface Pace {
  /** `dx`, `dy`, `dz` mm; a move without a way is a stop of `pauseS`. */
  readonly move: (dx: number, dy: number, dz: number, speedMmS: number, accelMmS2: number) => void
  readonly pause: (seconds: number) => void
  /** Comes to rest. Seconds in all. */
  readonly end: () => number
}

/** So many moves are looked ahead; further ones cannot slow the first where printers stop. */
const WINDOW = 512

/**
 * Drives moves as a printer that looks ahead does: at a corner the velocity jumps by no more than
 * at a right angle taken at `cornerMmS`; on a move it speeds up, cruises and slows down at its own
 * acceleration; no corner is entered faster than what follows can be slowed for.
 */
export function pace(cornerMmS: number): Pace {
  const length = new Float64Array(WINDOW)
  const speed = new Float64Array(WINDOW)
  const accel = new Float64Array(WINDOW)
  /** Highest speed at the start of each move: what its corner allows. */
  const corner = new Float64Array(WINDOW)
  const enter = new Float64Array(WINDOW + 1)
  let count = 0
  let seconds = 0
  /** Speed that the first of the window is entered at. */
  let entered = 0
  let [lastX, lastY, lastZ] = [0, 0, 0]

  const drive = (most: number, rest: boolean): void => {
    enter[count] = 0
    for (let i = count - 1; i > 0; i--) {
      const reach = Math.sqrt(enter[i + 1]! ** 2 + 2 * accel[i]! * length[i]!)
      enter[i] = Math.min(corner[i]!, speed[i]!, speed[i - 1]!, reach)
    }
    enter[0] = entered
    for (let i = 0; i < most; i++) {
      const reach = Math.sqrt(enter[i]! ** 2 + 2 * accel[i]! * length[i]!)
      const leave = Math.min(enter[i + 1]!, reach)
      enter[i + 1] = leave
      seconds += moveTime(length[i]!, speed[i]!, accel[i]!, enter[i], leave)
    }
    entered = rest ? 0 : enter[most]!
    length.copyWithin(0, most, count)
    speed.copyWithin(0, most, count)
    accel.copyWithin(0, most, count)
    corner.copyWithin(0, most, count)
    count -= most
  }
  const halt = (): void => {
    drive(count, true)
    lastX = lastY = lastZ = 0
  }
  return {
    move(dx, dy, dz, speedMmS, accelMmS2) {
      const way = Math.hypot(dx, dy, dz)
      if (!(way > 0) || !(speedMmS > 0) || !(accelMmS2 > 0)) return
      if (count === WINDOW) drive(WINDOW / 2, false)
      const [ux, uy, uz] = [dx / way, dy / way, dz / way]
      const rested = lastX === 0 && lastY === 0 && lastZ === 0
      const jump = Math.hypot(ux - lastX, uy - lastY, uz - lastZ)
      length[count] = way
      speed[count] = speedMmS
      accel[count] = accelMmS2
      corner[count] = rested ? 0 : jump > 0 ? (cornerMmS * Math.SQRT2) / jump : Infinity
      lastX = ux
      lastY = uy
      lastZ = uz
      count++
    },
    pause(pauseS) {
      halt()
      seconds += pauseS
    },
    end() {
      halt()
      return seconds
    },
  }
}
