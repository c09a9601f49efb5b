import { formatAll, formatFixed } from './format.ts'
import { shownAs, shownOf } from './shownUnits.ts'

/*
 * Findings, problems and notes are made where nobody knows the builder's units or language: in workers, and kept with
 * what they are about. They are written in metric and with English numbers; here they are put into the units that are
 * shown and the numbers of the browser, when they are drawn.
 */

const NUMBER = String.raw`(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?`
const UNIT = 'mm²|cm²|dm²|mm³|cm³|mm|g/dm²|g'
/**
 * Numbers that share the unit behind the last: "10 × 20 × 3 mm", "at x 1, y 2, z 3 mm", "16 to 18
 * mm".
 */
const LINK = String.raw` ?[×–] ?| to | or | and | against |, (?:[xyz] )?`
const FIGURE = new RegExp(
  String.raw`(?<![\p{L}\d.,])(${NUMBER}(?:(?:${LINK})${NUMBER})*)([ \u{A0}])(${UNIT})(?![\p{L}\d²³/])`,
  'gu',
)
/** A number on its own whose English writing differs from others': grouped, or with a point. */
const MARKED = new RegExp(
  String.raw`(?<![\p{L}\d.,“])(?:\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+\.\d+)(?![\d.,]*[\p{L}\d])`,
  'gu',
)

/** A sentence of the core's as it is shown; `locale` is BCP 47, left out the runtime's own. */
export function toldWords(text: string, locale?: string): string {
  return text
    .split(/(“[^”]*”)/)
    .map((piece) => (piece.startsWith('“') ? piece : withoutNames(piece, locale)))
    .join('')
}

function withoutNames(text: string, locale: string | undefined): string {
  const done: string[] = []
  // What is put in is held back from the second search by a mark that no text has.
  const put = (words: string) => `\u{E000}${done.push(words) - 1}\u{E001}`
  return text
    .replaceAll(FIGURE, (_, numbers: string, gap: string, unit: string) => {
      const as = shownAs(unit)
      const words = numbers.replaceAll(new RegExp(NUMBER, 'g'), (written) => {
        const decimals = decimalsOf(written)
        const value = shownOf(valueOf(written), as)
        return as.per === 1
          ? formatFixed(value, decimals, locale)
          : formatAll(value, decimals + as.finer, locale)
      })
      return put(`${words}${gap}${as.label}`)
    })
    .replaceAll(MARKED, (written) => formatFixed(valueOf(written), decimalsOf(written), locale))
    .replaceAll(/\u{E000}(\d+)\u{E001}/gu, (_, at: string) => done[Number(at)] ?? '')
}

function valueOf(written: string): number {
  return Number(written.replaceAll(',', ''))
}

function decimalsOf(written: string): number {
  return written.split('.')[1]?.length ?? 0
}
