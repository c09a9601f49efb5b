import type { ReactNode } from 'react'
import type { Habits } from '../../../core/model/habits.ts'

/** A drawing of 72 × 48, and what it shows in words. */
export interface HabitDrawing {
  readonly words: string
  readonly drawing: ReactNode
}

/*
 * Our own drawings, in the page's ink: `body` is the outline of a part, `laid` a line seen in
 * section or as a band, `way` the middle of a line seen from above. What the habit is about stands
 * in the page's pen, `told` and `told-way`.
 */

const sections = (className: string, y: number, width: number, xs: readonly number[], round = 0) =>
  xs.map((x) => (
    <rect key={`${x} ${y}`} className={className} x={x} y={y} width={width} height="8" rx={round} />
  ))
const steps = (count: number, from: number, by: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + i * by)
const ways = (className: string, xs: readonly number[], top: number, bottom: number) =>
  xs.map((x) => <path key={x} className={className} d={`M${x} ${top}V${bottom}`} />)

/** Layers of a slope, from the lowest up: where each lies and how far it reaches. */
const SLOPE = steps(4, 0, 1).map((i) => ({ y: 34 - 9 * i, end: 66 - 13 * i }))

export const HABIT_DRAWINGS: Readonly<Record<keyof Habits, HabitDrawing>> = {
  bead: {
    words:
      'Lines in section: above with square sides, each beside the next; below with round ones.',
    drawing: (
      <>
        {sections('laid', 10, 16, steps(4, 4, 16))}
        {sections('told', 30, 16, steps(4, 6, 14.6), 4)}
      </>
    ),
  },
  outerWidthShare: {
    words: 'Three wall lines side by side; the one along the outline is marked.',
    drawing: (
      <>
        <rect className="told" x="8" y="4" width="16" height="40" />
        <rect className="laid" x="24" y="4" width="12" height="40" />
        <rect className="laid" x="36" y="4" width="12" height="40" />
        <path className="body" d="M8 2V46" />
      </>
    ),
  },
  innerWidthShare: {
    words: 'Three wall lines side by side; the two further in are marked.',
    drawing: (
      <>
        <rect className="laid" x="8" y="4" width="12" height="40" />
        <rect className="told" x="20" y="4" width="16" height="40" />
        <rect className="told" x="36" y="4" width="16" height="40" />
        <path className="body" d="M8 2V46" />
      </>
    ),
  },
  skinWidthShare: {
    words: 'A solid layer inside its walls: its lines lie side by side and are marked.',
    drawing: (
      <>
        <rect className="body" x="6" y="4" width="60" height="40" />
        {steps(6, 10, 9).map((x) => (
          <rect key={x} className="told" x={x} y="8" width="8" height="32" />
        ))}
      </>
    ),
  },
  infillWidthShare: {
    words: 'An open layer inside its walls: a few lines far apart, marked.',
    drawing: (
      <>
        <rect className="body" x="6" y="4" width="60" height="40" />
        {steps(3, 15, 18).map((x) => (
          <rect key={x} className="told" x={x} y="5" width="6" height="38" />
        ))}
      </>
    ),
  },
  firstWidthShare: {
    words: 'Layers in section on the bed: the lines of the lowest one are wider, and marked.',
    drawing: (
      <>
        {sections('laid', 10, 10, steps(5, 11, 10), 3)}
        {sections('laid', 19, 10, steps(5, 11, 10), 3)}
        {sections('told', 28, 14, steps(4, 8, 14), 3)}
        <path className="body" d="M2 37H70" />
      </>
    ),
  },
  thinWalls: {
    words:
      'Two walls of one thickness: whole lines leave a gap in the left one, wider ones fill the right one.',
    drawing: (
      <>
        <path className="body" d="M8 2V46M30 2V46M42 2V46M64 2V46" />
        <rect className="laid" x="8" y="5" width="8" height="38" />
        <rect className="laid" x="22" y="5" width="8" height="38" />
        <rect className="told" x="42" y="5" width="11" height="38" />
        <rect className="told" x="53" y="5" width="11" height="38" />
      </>
    ),
  },
  oneLineBelow: {
    words: 'A wedge from above: one line where it is thin, two from a marked thickness on.',
    drawing: (
      <>
        <path className="body" d="M3 18L69 4V44L3 30Z" />
        <path className="way" d="M7 24H32" />
        <path className="way" d="M38 18L66 12M38 30L66 36" />
        <path className="told-way" d="M35 11.5V36.5" />
      </>
    ),
  },
  gapLines: {
    words: 'Two wall lines with a narrow gap between them; a thin line fills it, marked.',
    drawing: (
      <>
        <rect className="laid" x="12" y="4" width="18" height="40" />
        <rect className="told" x="30" y="4" width="7" height="40" />
        <rect className="laid" x="37" y="4" width="18" height="40" />
        <path className="body" d="M12 2V46M55 2V46" />
      </>
    ),
  },
  overlapShare: {
    words: 'Lines of skin end against a wall; where they reach over it is marked.',
    drawing: (
      <>
        <rect className="laid" x="8" y="3" width="16" height="42" />
        {steps(4, 5, 10).map((y) => (
          <rect key={y} className="laid" x="19" y={y} width="49" height="8" />
        ))}
        <rect className="told" x="19" y="3" width="5" height="42" />
      </>
    ),
  },
  smallRoomMm2: {
    words: 'A part with two rooms: the large one is open, the small one is filled and marked.',
    drawing: (
      <>
        <rect className="body" x="4" y="4" width="64" height="40" />
        <rect className="body" x="8" y="8" width="36" height="32" />
        <path className="way" d="M17 9V39M26 9V39M35 9V39" />
        <rect className="told" x="48" y="8" width="16" height="32" />
        <path className="told-way" d="M52 8V40M56 8V40M60 8V40" />
      </>
    ),
  },
  holdMm: {
    words: 'A step in section: the skin of the ledge is carried on under the upper part, marked.',
    drawing: (
      <>
        <path className="body" d="M4 44V24H36V4H68V44Z" />
        <rect className="laid" x="4" y="24" width="32" height="7" />
        <rect className="told" x="36" y="24" width="18" height="7" />
      </>
    ),
  },
  slopeBandMm: {
    words: 'A slope in section, built of layers: beneath each step lies a solid band, marked.',
    drawing: (
      <>
        {SLOPE.map(({ y, end }) => (
          <rect key={y} className="laid" x="4" y={y} width={end - 4} height="9" />
        ))}
        {SLOPE.map(({ y, end }) => (
          <rect
            key={y}
            className="told"
            x={Math.max(4, end - 24)}
            y={y}
            width={Math.min(24, end - 4)}
            height="9"
          />
        ))}
      </>
    ),
  },
  undersides: {
    words:
      'A shelf in section: two skins lie on the bed, three over the underside in the air, marked.',
    drawing: (
      <>
        <path className="body" d="M4 45V5H68V25H32V45Z" />
        {[33, 39].map((y) => (
          <rect key={y} className="laid" x="5" y={y} width="26" height="5" />
        ))}
        {[7, 13, 19].map((y) => (
          <rect key={y} className="told" x="33" y={y} width="34" height="5" />
        ))}
        <path className="body" d="M2 45.5H70" />
      </>
    ),
  },
  strandShare: {
    words: 'In section: round strands, marked, lie over an open room, flat lines on top of them.',
    drawing: (
      <>
        {sections('laid', 5, 12, steps(5, 6, 12))}
        {steps(5, 12, 12).map((x) => (
          <circle key={x} className="told" cx={x} cy="19.5" r="6.2" />
        ))}
        <rect className="laid" x="6" y="26" width="8" height="19" />
        <rect className="laid" x="58" y="26" width="8" height="19" />
      </>
    ),
  },
  joinedShare: {
    words:
      'Infill lines from above, going to and fro: where one leads to the next along the wall is marked.',
    drawing: (
      <>
        <rect className="body" x="4" y="4" width="64" height="40" />
        {ways('way', steps(5, 12, 12), 8, 40)}
        <path className="told-way" d="M12 8H24M36 8H48M24 40H36M48 40H60" />
      </>
    ),
  },
}
