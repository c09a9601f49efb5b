import { LEAST_OVERHANG_MM2 } from '../../core/mesh/overhang.ts'
import { middleOf } from '../../core/mesh/boxOfMesh.ts'
import type { HoleGroup } from '../../core/drawing/groupHoles.ts'
import type { Anchors } from '../../core/drawing/types.ts'
import type { Part } from '../../core/model/frame.ts'
import type { Bounds, Finding, Vec3 } from '../../core/model/mesh.ts'
import type { LookAnswer } from '../../state/store/types.ts'
import { lengthUnit, shownAs, shownOf } from '../../core/words/shownUnits.ts'
import { showMm, showNumber } from '../show.ts'

/** Where the marks of the part on show stand as text. */
export const MARK_LIST = 'part-marks'

/** Something shown on the drawing of a part, with its name and its line in the list below. */
export interface PartMark {
  readonly kind: 'finding' | 'over' | 'zone' | 'hole'
  /**
   * Stands at its leader line and before its line of the list: letters for what is odd, z for
   * zones, figures for holes.
   */
  readonly sign: string
  /** Below the sign, where there is room. */
  readonly short: string
  readonly words: string
  /** Where its leader line may end; null for what cannot be seen from here. */
  readonly anchors: Anchors | null
  /** Of a finding, in the part's own axes. */
  readonly place?: Bounds
}

interface PlacedFinding extends Finding {
  readonly place: Bounds
}

function placedFindings(findings: readonly Finding[]): readonly PlacedFinding[] {
  return findings.filter((finding): finding is PlacedFinding => finding.place !== undefined)
}

/** Points to find on the sheet, one a finding that has a place. */
export function findingPoints(findings: readonly Finding[]): readonly Vec3[] {
  return placedFindings(findings).map(({ place }) => middleOf(place))
}

/** The letter of a finding on the drawing; null for one without a place. */
export function findingSign(findings: readonly Finding[], finding: Finding): string | null {
  const at = placedFindings(findings).findIndex((each) => each === finding)
  return at < 0 ? null : letter(at)
}

export function partMarks(
  look: LookAnswer,
  { recipe, zones }: Part,
  findings: readonly Finding[],
): readonly PartMark[] {
  const placed = placedFindings(findings)
  const odd = placed.map((finding, i): PartMark => {
    const { short, message, place } = finding
    const point = look.points[i]
    return {
      kind: 'finding',
      sign: letter(i),
      short: '',
      words: short === '' ? message : short,
      anchors: point === undefined ? null : pointAnchors(point),
      place,
    }
  })
  const { areaMm2, anchors } = look.overhang
  const over: PartMark[] =
    areaMm2 < LEAST_OVERHANG_MM2
      ? []
      : [
          {
            kind: 'over',
            sign: letter(placed.length),
            short: 'hangs over',
            words: `${areaWords(areaMm2)} hang over or bridge a gap; supports are ${recipe.supports ? 'on' : 'off'}`,
            anchors,
          },
        ]
  const inZones = zones.flatMap((zone, i): readonly PartMark[] => {
    const shadow = look.zones[i]
    if (shadow === undefined) return []
    const percent = `${showNumber(zone.infillPct, 1)} %`
    return [
      {
        kind: 'zone',
        sign: `z${i + 1}`,
        short: percent,
        words: `${zone.fileName}: infill ${percent}`,
        anchors: shadow.anchors,
      },
    ]
  })
  const holes = look.holes.map((group): PartMark => {
    const seen = group.places.find(({ isSeen }) => isSeen)
    const size = `${group.places.length} × ${holeSize(group)}`
    return {
      kind: 'hole',
      sign: String(group.group),
      short: size,
      words: `${size} ${lengthUnit()}, ${holeWords(group)}`,
      anchors: seen === undefined ? null : pointAnchors([seen.x, seen.y]),
    }
  })
  return [...odd, ...over, ...inZones, ...holes]
}

function holeSize({ shape, diameterMm, lengthMm }: HoleGroup): string {
  const size = showMm(diameterMm, 2)
  if (shape === 'round') return `Ø ${size}`
  return shape === 'slot' ? `slot ${size} × ${showMm(lengthMm, 2)}` : `hexagon ${size}`
}

function holeWords({ through, depthMm: { low, high }, lies, seats }: HoleGroup): string {
  const deep = high - low < 0.05 ? showMm(high, 1) : `${showMm(low, 1)}–${showMm(high, 1)}`
  const seated = seats.map(
    ({ kind, diameterMm }) => `, ${kind} ${showMm(diameterMm, 2)} ${lengthUnit()}`,
  )
  return `${through ? 'through' : 'blind'}, ${deep} ${lengthUnit()} deep, ${lies}${seated.join('')}`
}

/** Length × width × height of a box with their unit. */
export function sizeWords({ min, max }: Bounds): string {
  const sides = max.map((value, k) => showMm(value - (min[k] ?? 0), 1))
  return `${sides.join(' × ')} ${lengthUnit()}`
}

const letter = (i: number): string => String.fromCodePoint(97 + (i % 26))

function pointAnchors([x, y]: readonly [number, number]): Anchors {
  const at = { x, y, crossed: 0 }
  return { left: at, right: at, top: at, bottom: at }
}

function areaWords(areaMm2: number): string {
  const as = shownAs('cm²')
  const decimals = (areaMm2 < 100 ? 2 : 1) + as.finer
  return `${showNumber(shownOf(areaMm2 / 100, as), decimals)} ${as.label}`
}
