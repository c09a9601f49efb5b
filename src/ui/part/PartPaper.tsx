import { toldWords } from '../../core/words/toldWords.ts'
import { PATTERN_NAMES } from '../../core/data/limits.ts'
import { piecesWords } from '../../core/frame/sayings.ts'
import { ROLES } from '../../core/data/roles.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import { ownRolesOf } from '../../state/store/ownRoles.ts'
import { useAppState } from '../appContext.ts'
import { PaperPictures } from './PaperPictures.tsx'
import { censusOf, findingsOf, readOf } from '../ledger/partWork.ts'
import { showGrams, showMoney, showNumber, showTime, showLength } from '../show.ts'
import { BedNote } from './BedNote.tsx'
import { Breakdown } from './Breakdown.tsx'
import { directionNote } from './directionNote.ts'
import { MeasuredList } from './MeasuredList.tsx'
import { TermList } from './TermList.tsx'
import { massUnit } from '../../core/words/shownUnits.ts'

/** A part as it goes on paper: drawn in lines, with its recipe, its figures and what was found. */
export function PartPaper({ row }: { readonly row: LedgerRow }) {
  const { part, material, figures, sum, work } = row
  const currency = useAppState((state) => state.frame.prices.currency)
  const own = useAppState((state) => ownRolesOf(state).find(({ id }) => id === part.ownRole))
  const { recipe } = part
  const read = readOf(work)
  const direction = read === null ? null : directionNote(read.measure.boundsMm, part.pose)
  const mm = (value: number) => showLength(value, 2)
  const terms: (readonly [string, string])[] = [
    ['Plastic', material.name],
    ['Recipe for', own?.name ?? (part.role === null ? 'set by hand' : ROLES[part.role].name)],
    ['Walls', `${recipe.walls} lines = ${mm(recipe.walls * recipe.lineMm)}`],
    [
      'Infill',
      `${showNumber(recipe.infillPct, 1)} % ${PATTERN_NAMES[recipe.pattern].toLowerCase()}`,
    ],
    ['Skins, top and bottom', `${recipe.topSkins} and ${recipe.bottomSkins} layers`],
    ['Layer, first layer', `${mm(recipe.layerMm)}, ${mm(recipe.firstLayerMm)}`],
    ['Line width', mm(recipe.lineMm)],
    ['Supports, brim', `${recipe.supports ? 'on' : 'off'}, ${mm(recipe.brimMm)}`],
    [
      'Printed',
      `${piecesWords(part.quantity, part.spares)}${part.mirrored > 0 ? `, ${part.mirrored} mirrored` : ''}`,
    ],
  ]
  if (sum !== null) {
    const mass = showGrams(sum.pieceG)
    terms.push([
      'Mass of one',
      `${mass.mid} ${massUnit()} (${mass.range === '' ? 'weighed' : mass.range})`,
    ])
  }
  if (sum !== null && figures !== null) {
    const cost = showMoney(sum.withSpares.cost, currency)
    const time = showTime(sum.withSpares.timeS)
    terms.push(['Cost of all', `${cost.mid} ${currency} (${cost.range})`])
    terms.push(['Hours of all', `${time.mid} (${time.range})`])
  }
  return (
    <div className="part-paper">
      <div>
        {read === null ? null : <PaperPictures row={row} read={read} />}
        {figures === null ? null : <Breakdown figures={figures} sum={sum} />}
        <ul className="findings">
          {findingsOf(work).map(({ code, message }) => (
            <li key={code + message}>{toldWords(message)}</li>
          ))}
        </ul>
        {read === null ? null : <BedNote part={part} boundsMm={read.measure.boundsMm} />}
        {direction === null ? null : <p className="hint">{direction}</p>}
        {part.note === '' ? null : <p>{part.note}</p>}
      </div>
      <div>
        <TermList of={terms} />
        {read === null ? null : (
          <MeasuredList read={read} census={censusOf(work)} figures={figures} />
        )}
      </div>
    </div>
  )
}
