import { clashWords, wayWords } from './offerWords.ts'
import { meetingWords, sideWords } from './jointWords.ts'
import { WayPicture } from './OfferPicture.tsx'
import { labelOf, pieceName } from './pieces.ts'
import type { Assembling, ShownWay } from './useAssembling.ts'

/** The card of one way: its picture, on what it stands, how they meet and what is in the way. */
export function wayCard(
  parts: Parameters<typeof pieceName>[0],
  { way, clashes }: ShownWay,
  i: number,
  model: Assembling,
) {
  const clash = clashWords(parts, clashes, model)
  const words = wayWords(parts, way, i, model, undefined)
  return {
    key: `${way.key} ${way.joint.a.piece} ${way.motion.move.map((mm) => mm.toFixed(2)).join(' ')}`,
    label: clash === '' ? words : `${words}, ${clash}`,
    picture: <WayPicture way={way} model={model} />,
    words: (
      <>
        <strong>{i + 1}</strong> on {labelOf(parts, way.joint.a)} {pieceName(parts, way.joint.a)}
        <span className="range">
          {sideWords(way)}, {meetingWords(way.joint)}
        </span>
        {way.also.length > 0 ? (
          <span className="range">
            and on {way.also.map(({ a }) => labelOf(parts, a)).join(', ')}
          </span>
        ) : null}
        {way.isDrawn ? <span className="range">as the files lie</span> : null}
        {clash === '' ? null : <span className="amber">{clash}</span>}
      </>
    ),
  }
}
