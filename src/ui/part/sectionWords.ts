import type { PartSection, SectionRegion } from '../../core/census/section/types.ts'
import { shownAs, shownOf } from '../../core/words/shownUnits.ts'
import { showLength, showMass, showMm, showNumber } from '../show.ts'
import type { RegionWords } from '../drawing/SectionDrawing.tsx'
import type { LaidShare } from './laidShares.ts'

const NAMES = {
  wall: { name: 'walls', laid: ['walls', 'gaps'] },
  skin: { name: 'skins', laid: ['skins', 'strands'] },
  room: { name: 'infill', laid: ['infill'] },
  support: { name: 'supports', laid: ['supports'] },
} as const satisfies Record<string, { name: string; laid: readonly LaidShare['id'][] }>

/** What a region of the cut is called, with the grams of one piece that are laid so. */
export function regionWords(
  { kind, zone }: SectionRegion,
  laidAs: readonly LaidShare[],
  infillPct: number,
  zonePcts: readonly number[],
): RegionWords | null {
  if (kind === 'cut') return null
  if (kind === 'zone')
    return { name: `zone z${zone + 1}`, figure: `${showNumber(zonePcts[zone] ?? 0, 1)} %` }
  const { name, laid } = NAMES[kind]
  const massG = laidAs
    .filter(({ id }) => laid.some((each) => each === id))
    .reduce((sum, share) => sum + share.massG, 0)
  const grams = laidAs.length === 0 ? '' : showMass(massG)
  if (kind !== 'room') return { name, figure: grams }
  return infillPct === 0
    ? { name: 'hollow', figure: '' }
    : { name: `infill ${showNumber(infillPct, 1)} %`, figure: grams }
}

/** Where the cut lies and how its face is divided, in a sentence or two. */
export function sectionSentence(section: PartSection): string {
  const areas = new Map<string, number>()
  for (const { kind, boxes } of section.regions) {
    let area = areas.get(kind) ?? 0
    for (let i = 0; i + 3 < boxes.length; i += 4) {
      const [left = 0, right = 0, bottom = 0, top = 0] = boxes.subarray(i, i + 4)
      area += (right - left) * (top - bottom)
    }
    areas.set(kind, area)
  }
  const cut = areas.get('cut') ?? 0
  if (cut === 0) return `${planeWords(section)}. The plane meets nothing there.`
  // What is neither skin nor room: the walls, with what is left free between their lines in the
  // drawing.
  const share = (area: number): string => `${showNumber((100 * area) / cut, 0)}\u{A0}%`
  const skin = areas.get('skin') ?? 0
  const room = areas.get('room') ?? 0
  const zone = areas.get('zone') ?? 0
  const inZones = zone > 0 ? `, rooms in zones ${share(zone)}` : ''
  const held = (areas.get('support') ?? 0) > 0 ? ' Supports stand beside it.' : ''
  return (
    `${planeWords(section)}, ${sectionArea(cut)}: walls ${share(cut - skin - room - zone)}, ` +
    `skins ${share(skin)}, rooms for infill ${share(room)}${inZones}.${held}`
  )
}

function sectionArea(areaMm2: number): string {
  const as = shownAs('mm²')
  return `${showNumber(shownOf(areaMm2, as), (areaMm2 < 10 ? 2 : 0) + as.finer)} ${as.label}`
}

export function planeWords({ axis, layer, layers, reachMm, atShare }: PlaneOf): string {
  return axis === 'z'
    ? `Layer ${showNumber(layer ?? 0, 0)} of ${showNumber(layers, 0)}`
    : `${showMm(atShare * reachMm, 1)} of ${showLength(reachMm, 1)}`
}

type PlaneOf = Pick<PartSection, 'axis' | 'layer' | 'layers' | 'reachMm' | 'atShare'>
