/** A mass as it is drawn; px. */
export interface DrawnMass {
  readonly name: string
  readonly massG: number
  readonly x: number
  readonly y: number
  readonly radius: number
}

/** A name and where its middle stands; px. */
export interface MassName {
  readonly name: string
  readonly x: number
  readonly y: number
}

interface Sheet {
  readonly widthPx: number
  readonly heightPx: number
  /** What no name should cover; the middle of a mark. px */
  readonly mark: { readonly x: number; readonly y: number }
}

const NAMES = 6
/** Width of a letter of a name, rather too much than too little; and the height of a line. px */
const LETTER = 5.4
const LINE = 13
/** Longer names are cut. */
const LETTERS = 36
const GAP = 5
/**
 * A name that would cover more circles than this is left out: in such a crowd nobody sees whose it
 * is.
 */
const MOST_COVERED = 1
/** Half the width of a mark. px */
const MARK = 8

/**
 * Names of the heaviest few that have room, each beside, above or below its circle: none upon
 * another, and where they cover the fewest circles.
 */
export function nameMasses(masses: readonly DrawnMass[], sheet: Sheet): readonly MassName[] {
  const taken: MassName[] = []
  const told = new Set<string>()
  for (const mass of masses.toSorted((a, b) => b.massG - a.massG)) {
    if (taken.length === NAMES) break
    if (told.has(mass.name)) continue
    const [best] = spotsOf(mass)
      .filter((spot) => isWithin(spot, sheet) && !taken.some((other) => isUpon(spot, other)))
      .map((spot) => ({ spot, covered: coveredBy(spot, masses, sheet) }))
      .toSorted((a, b) => a.covered - b.covered)
    if (best === undefined || best.covered > MOST_COVERED) continue
    told.add(mass.name)
    taken.push(best.spot)
  }
  return taken
}

function spotsOf({ name: whole, x, y, radius }: DrawnMass): readonly MassName[] {
  const name = whole.length > LETTERS ? `${whole.slice(0, LETTERS - 1).trimEnd()}…` : whole
  const across = radius + GAP + halfOf(name)
  const up = radius + GAP + LINE / 2
  return [
    { name, x: x + across, y },
    { name, x: x - across, y },
    { name, x, y: y - up },
    { name, x, y: y + up },
  ]
}

const halfOf = (name: string): number => (name.length * LETTER) / 2

function isWithin({ name, x, y }: MassName, { widthPx, heightPx }: Sheet): boolean {
  const half = halfOf(name)
  return x >= half && x <= widthPx - half && y >= LINE && y <= heightPx - LINE
}

function isUpon(one: MassName, other: MassName): boolean {
  const apart = halfOf(one.name) + halfOf(other.name)
  return Math.abs(one.x - other.x) < apart && Math.abs(one.y - other.y) < LINE
}

function coveredBy(spot: MassName, masses: readonly DrawnMass[], { mark }: Sheet): number {
  const covers = (x: number, y: number, radius: number) =>
    Math.abs(spot.x - x) < halfOf(spot.name) + radius && Math.abs(spot.y - y) < LINE / 2 + radius
  const circles = masses.filter(({ x, y, radius }) => covers(x, y, radius)).length
  return circles + (covers(mark.x, mark.y, MARK) ? 1 + MOST_COVERED : 0)
}
