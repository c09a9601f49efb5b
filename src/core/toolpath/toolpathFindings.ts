import type { Finding } from '../model/mesh.ts'
import type { SeenRecipe } from '../model/toolpath.ts'
import { USUAL_MM } from './filament.ts'
import type { ReadTally } from './moveReader.ts'

interface Seen {
  readonly tally: ReadTally
  readonly recipe: SeenRecipe
  /** Of the plastic, what is laid while the head rises. */
  readonly risingShare: number
  readonly typedMm: number | null
  readonly seenMm2: number | null
  readonly soldMm: number | null
}

/** Beyond this share a print winds upwards in one line. */
const WINDS_UP = 0.2
/** A typed diameter further off than this does not fit the moves, as a share. */
const MISFIT = 0.06

const GUESSED = `${USUAL_MM} mm was taken; say if it is another.`

/** What was odd about a toolpath, and what it could not tell. */
export function toolpathFindings(seen: Seen): readonly Finding[] {
  const { tally, recipe, risingShare, typedMm, seenMm2, soldMm } = seen
  const findings: Finding[] = []
  const add = (finding: Finding): void => void findings.push(finding)
  if (tally.tooFar > 0) {
    add({
      code: 'skipped-content',
      grade: 'changes the grams',
      short: 'moves too far',
      message: `${tally.tooFar} moves go further than 100 m and were left out.`,
      count: tally.tooFar,
    })
  }
  if (risingShare > WINDS_UP) {
    add({
      code: 'doubtful-layers',
      grade: 'worth knowing',
      short: 'winds upwards',
      message:
        'The head rises while it lays: the print winds upwards in one line. Plastic and time hold; ' +
        'walls, skins and infill cannot be told.',
    })
  }
  const seenMm = seenMm2 === null ? null : Math.sqrt((4 * seenMm2) / Math.PI)
  if (typedMm !== null && seenMm !== null && Math.abs(seenMm / typedMm - 1) > MISFIT) {
    add({
      code: 'doubtful-layers',
      grade: 'changes the grams',
      short: 'other filament',
      message:
        `The lines lie as if the filament were ${seenMm.toFixed(2)} mm thick, not ${typedMm}. ` +
        `The grams were reckoned with ${typedMm} mm.`,
    })
  }
  if (typedMm === null && soldMm === null) {
    add({
      code: 'doubtful-layers',
      grade: 'changes the grams',
      short: 'filament guessed',
      message:
        seenMm === null
          ? 'No lines touch, so the moves do not tell how thick the filament is. ' + GUESSED
          : `The lines lie as if the filament were ${seenMm.toFixed(2)} mm thick, which none is. ${GUESSED}`,
    })
  }
  const untold = untoldOf(recipe)
  if (untold.length > 0) {
    add({
      code: 'doubtful-layers',
      grade: 'note',
      short: 'recipe in part',
      message: `The moves do not tell the ${untold.join(', ')}: the print has no rooms large enough to show it.`,
    })
  }
  return findings
}

function untoldOf({ walls, topSkins, bottomSkins, infillPct }: SeenRecipe): readonly string[] {
  return [
    walls === null ? 'walls' : null,
    topSkins === null ? 'top skins' : null,
    bottomSkins === null ? 'bottom skins' : null,
    infillPct === null ? 'infill' : null,
  ].filter((each) => each !== null)
}
