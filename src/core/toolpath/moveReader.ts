import type { Move } from '../model/toolpath.ts'
import { arcPoints } from './arcPoints.ts'
import type { Words } from './readWords.ts'
import { readWords, wordsBuffer } from './readWords.ts'

/** No printer's line is longer; what follows in one that comes in pieces is not kept. */
const LONGEST_LINE = 16_384
const INCH_MM = 25.4
/** Arcs become chords that stray from them by no more. mm */
const CHORD_MM = 0.01
/**
 * Coordinates beyond this are nonsense; layers are kept by height, so that it bounds them too. mm
 */
const FARTHEST_MM = 5000

/** Feeds on bytes in pieces of any size and hands on the moves they hold. */
export interface MoveReader {
  readonly push: (bytes: Uint8Array) => void
  /** Reads what is left of the last line. */
  readonly end: () => ReadTally
}

/** What a reader came across. */
export interface ReadTally {
  readonly lines: number
  readonly moves: number
  /** Moves to places that no printer has. */
  readonly tooFar: number
}

/**
 * Reads G-code as printers speak it (words of ISO 6983-1): straight moves and arcs (G0–G3), units
 * (G20, G21), absolute and relative ways of X, Y, Z (G90, G91) and of the extruder (M82, M83, and
 * G90/G91 where neither stands), G92 resets, G28, drawing back by the printer itself (G10, G11) as
 * no plastic, accelerations (M204). Everything else is passed over.
 */
export function moveReader(onMove: (move: Move) => void): MoveReader {
  const words = wordsBuffer()
  const head = headAt(onMove)
  let rest = new Uint8Array(256)
  let restLength = 0
  let lines = 0

  const take = (bytes: Uint8Array, from: number, to: number): void => {
    lines++
    readWords(bytes, from, to, words)
    if (words.command !== '') head.obey(words)
    else if (hasPlace(words)) head.obey({ command: head.lastMove(), values: words.values })
  }
  const keep = (bytes: Uint8Array, from: number, to: number): void => {
    const length = Math.min(to - from, LONGEST_LINE - restLength)
    if (restLength + length > rest.length) {
      const grown = new Uint8Array(2 * (restLength + length))
      grown.set(rest.subarray(0, restLength))
      rest = grown
    }
    rest.set(bytes.subarray(from, from + length), restLength)
    restLength += length
  }
  return {
    push(bytes) {
      let from = 0
      for (;;) {
        const to = bytes.indexOf(10, from)
        if (to < 0) break
        if (restLength > 0) {
          keep(bytes, from, to)
          take(rest, 0, restLength)
          restLength = 0
        } else take(bytes, from, to)
        from = to + 1
      }
      keep(bytes, from, bytes.length)
    },
    end() {
      if (restLength > 0) take(rest, 0, restLength)
      restLength = 0
      return { lines, ...head.tally() }
    },
  }
}

const LETTERS = { E: 4, F: 5, I: 8, J: 9, P: 15, R: 17, S: 18, T: 19, X: 23, Y: 24, Z: 25 } as const

const hasPlace = ({ values }: Words): boolean =>
  !Number.isNaN(values[LETTERS.X]!) || !Number.isNaN(values[LETTERS.Y]!)

/** The head of a printer that obeys one line after another. */
function headAt(onMove: (move: Move) => void) {
  let [x, y, z, e] = [0, 0, 0, 0]
  let unit = 1
  let relative = false
  /** null: as `relative` says. */
  let extruderRelative: boolean | null = null
  let speedMmS = 0
  let accelMmS2 = 0
  let travelAccelMmS2 = 0
  /** Drawn back and not pushed forward yet. */
  let debtMm = 0
  let last = ''
  let moves = 0
  let tooFar = 0

  const move = (toX: number, toY: number, toZ: number, filamentMm: number): void => {
    const laidMm = filamentMm > 0 ? Math.max(0, filamentMm - debtMm) : 0
    debtMm = Math.max(0, debtMm - filamentMm)
    moves++
    onMove({
      fromX: x,
      fromY: y,
      fromZ: z,
      toX,
      toY,
      toZ,
      filamentMm,
      laidMm,
      speedMmS,
      accelMmS2: filamentMm > 0 ? accelMmS2 : travelAccelMmS2,
    })
    x = toX
    y = toY
    z = toZ
  }

  const go = (command: string, values: Float64Array): void => {
    const to = (letter: number, now: number): number => {
      const value = values[letter]!
      if (Number.isNaN(value)) return now
      return relative ? now + value * unit : value * unit
    }
    const feed = values[LETTERS.F]!
    if (feed > 0) speedMmS = (feed * unit) / 60
    const [toX, toY, toZ] = [to(LETTERS.X, x), to(LETTERS.Y, y), to(LETTERS.Z, z)]
    if (Math.max(Math.abs(toX), Math.abs(toY), Math.abs(toZ)) > FARTHEST_MM) {
      tooFar++
      return
    }
    const pushed = values[LETTERS.E]!
    let filamentMm = 0
    if (!Number.isNaN(pushed)) {
      const own = extruderRelative ?? relative
      filamentMm = own ? pushed * unit : pushed * unit - e
      e += filamentMm
    }
    if (command === 'G0' || command === 'G1') {
      move(toX, toY, toZ, filamentMm)
      return
    }
    const centre = [values[LETTERS.I]!, values[LETTERS.J]!, values[LETTERS.R]!] as const
    const points = arcPoints(
      [x, y],
      [toX, toY],
      { i: centre[0] * unit, j: centre[1] * unit, r: centre[2] * unit },
      command === 'G2',
      CHORD_MM,
    )
    const [fromZ, count] = [z, points.length]
    points.forEach(([px, py], k) => {
      const pz = fromZ + ((toZ - fromZ) * (k + 1)) / count
      move(px, py, pz, filamentMm / count)
    })
  }

  return {
    lastMove: () => last,
    tally: () => ({ moves, tooFar }),
    obey({ command, values }: Words): void {
      switch (command) {
        case 'G0':
        case 'G1':
        case 'G2':
        case 'G3':
          last = command
          go(command, values)
          return
        case 'G20':
          unit = INCH_MM
          return
        case 'G21':
          unit = 1
          return
        case 'G90':
          relative = false
          return
        case 'G91':
          relative = true
          return
        case 'M82':
          extruderRelative = false
          return
        case 'M83':
          extruderRelative = true
          return
        case 'G28': {
          const all = [LETTERS.X, LETTERS.Y, LETTERS.Z].every((l) => Number.isNaN(values[l]!))
          if (all || !Number.isNaN(values[LETTERS.X]!)) x = 0
          if (all || !Number.isNaN(values[LETTERS.Y]!)) y = 0
          if (all || !Number.isNaN(values[LETTERS.Z]!)) z = 0
          return
        }
        case 'G92': {
          const set = (letter: number, now: number): number =>
            Number.isNaN(values[letter]!) ? now : values[letter]! * unit
          x = set(LETTERS.X, x)
          y = set(LETTERS.Y, y)
          z = set(LETTERS.Z, z)
          e = set(LETTERS.E, e)
          return
        }
        case 'M204': {
          const [s, p, t] = [values[LETTERS.S]!, values[LETTERS.P]!, values[LETTERS.T]!]
          if (s > 0) accelMmS2 = travelAccelMmS2 = s
          if (p > 0) accelMmS2 = p
          if (t > 0) travelAccelMmS2 = t
          return
        }
        default:
      }
    },
  }
}
