import type { Item, WingSetup } from '../../../core/model/aircraft.ts'
import type { FrameBalance } from '../../../core/aircraft/balance/frameBalance.ts'
import {
  noseMmOf,
  packSlideMm,
  trimWeightG,
  wingBalance,
} from '../../../core/aircraft/balance/wingBalance.ts'
import { formatPercent } from '../../../core/words/format.ts'
import { showLength } from '../../show.ts'
import { FigureList, type ListedFigure } from '../FigureList.tsx'
import { tenthMass } from '../words.ts'
import { WingBalanceFields } from './WingBalanceFields.tsx'
import { toldWords } from '../../../core/words/toldWords.ts'

interface WingBalanceBlockProps {
  readonly wing: WingSetup
  readonly balance: FrameBalance | null
  readonly items: readonly Item[]
}

/** Where a plane balances along its chord, against the range its builder wants. */
export function WingBalanceBlock({ wing, balance, items }: WingBalanceBlockProps) {
  const found = balance === null ? null : wingBalance(wing, balance.cgMm[0])
  return (
    <>
      <h4>Along the chord</h4>
      {found === null ? null : (
        <>
          <ChordRuler wing={wing} behindMm={found.behindMm} />
          <p className={found.verdict === 'tail-heavy' ? 'craft-bad' : 'craft-verdict'}>
            {toldWords(found.words)}
          </p>
          {balance === null ? null : (
            <FigureList
              of={remedies(balance, found.shiftMm, found.chordShare, items, noseMmOf(wing))}
            />
          )}
        </>
      )}
      <WingBalanceFields />
    </>
  )
}

function remedies(
  balance: FrameBalance,
  shiftMm: number,
  chordShare: number,
  items: readonly Item[],
  noseMm: number,
): readonly ListedFigure[] {
  const figures: ListedFigure[] = [
    { words: 'Of the mean chord', figure: formatPercent(chordShare) },
  ]
  if (shiftMm === 0) return figures
  const [cgX] = balance.cgMm
  const weightG = trimWeightG(balance.massG, cgX, shiftMm, noseMm)
  figures.push({
    words: shiftMm > 0 ? 'Nose weight to reach the range' : 'Weight there to reach the range',
    figure: weightG === null ? 'none there can do it' : tenthMass(weightG),
    strong: true,
  })
  const pack = items
    .filter(({ group, positionMm }) => group === 'power' && positionMm !== null)
    .toSorted((a, b) => b.massG - a.massG)[0]
  const slideMm =
    pack === undefined ? null : packSlideMm(balance.massG, shiftMm, pack.massG * pack.quantity)
  if (pack !== undefined && slideMm !== null) {
    const size = showLength(Math.abs(slideMm), 0)
    figures.push({
      words: `Or slide “${pack.name}”`,
      figure: `${size} ${slideMm > 0 ? 'forward' : 'back'}`,
    })
  }
  return figures
}

/** The chord from its leading edge, the range on it, and a needle where the aircraft balances. */
function ChordRuler({ wing, behindMm }: { readonly wing: WingSetup; readonly behindMm: number }) {
  const chord = Math.max(1, wing.meanChordMm)
  const percent = (mm: number) => `${Math.min(100, Math.max(0, (mm / chord) * 100))}%`
  const [low, high] = wing.balanceMm
  return (
    <div className="chord" aria-hidden="true">
      <span
        className="chord-range"
        style={{ left: percent(low), right: `calc(100% - ${percent(high)})` }}
      />
      <span className="chord-needle" style={{ left: percent(behindMm) }} />
      <span className="chord-word">leading edge</span>
      <span className="chord-word chord-end">trailing edge</span>
    </div>
  )
}
