import type { Printer, PrinterMore } from '../model/figures.ts'

/*
 * What may be typed of a printer besides: one speed for a wall and one for a skin are enough, and what is left out
 * follows them. Ratios and ranges are our own round figures (common practice, no source).
 */

/** One number of a printer that may be left out, in `unit`; its limits stand in `limits.ts`. */
export interface MoreField {
  readonly key: keyof PrinterMore
  readonly label: string
  readonly unit: string
  /** Left out, it is so much of another speed; `low` and `high` are what printers are run at. */
  readonly follows: {
    readonly key: 'wallMmS' | 'skinMmS'
    readonly words: string
    readonly ratio: number
    readonly low: number
    readonly high: number
  } | null
  /** One plain sentence. */
  readonly explain: string
}

const ofWall = (ratio: number, low: number, high: number): MoreField['follows'] => ({
  key: 'wallMmS',
  words: 'wall speed',
  ratio,
  low,
  high,
})
const ofSkin = (ratio: number, low: number, high: number): MoreField['follows'] => ({
  key: 'skinMmS',
  words: 'skin speed',
  ratio,
  low,
  high,
})

/** Taken where nobody typed one (common practice, no source). mm/s */
export const FLOOR_MM_S = 10

export const MORE_FIELDS: readonly MoreField[] = [
  {
    key: 'outerWallMmS',
    label: 'Outer wall speed',
    unit: 'mm/s',
    follows: ofWall(0.8, 0.5, 1),
    explain: 'The outermost line of a wall, often slower than those behind it for a clean surface.',
  },
  {
    key: 'smallLoopMmS',
    label: 'Small loop speed',
    unit: 'mm/s',
    follows: ofWall(0.6, 0.3, 1),
    explain: 'Every line around holes and pins up to some 9.5 mm, which round off when laid fast.',
  },
  {
    key: 'gapMmS',
    label: 'Gap line speed',
    unit: 'mm/s',
    follows: ofWall(0.6, 0.3, 1),
    explain: 'Lines narrower than a whole one, in what wall lines leave between them.',
  },
  {
    key: 'topSkinMmS',
    label: 'Top skin speed',
    unit: 'mm/s',
    follows: ofSkin(0.8, 0.5, 1),
    explain: 'The last solid layer of a face that looks up, the one you see.',
  },
  {
    key: 'strandMmS',
    label: 'Strand speed',
    unit: 'mm/s',
    follows: ofSkin(0.6, 0.3, 1),
    explain:
      'Lines laid across air: the first solid layer over infill, and undersides without support.',
  },
  {
    key: 'floorMmS',
    label: 'Slowest speed',
    unit: 'mm/s',
    follows: null,
    explain:
      'A small layer is slowed for the least layer time down to this and no further, so needles do not wait for ever.',
  },
]

/** Every number that may be left out, as typed or as it follows. mm/s */
export function moreOf(printer: Printer): Required<PrinterMore> {
  const filled = MORE_FIELDS.map(({ key, follows }) => {
    const usual = follows === null ? FLOOR_MM_S : follows.ratio * printer[follows.key]
    return [key, printer[key] ?? usual] as const
  })
  return Object.fromEntries(filled) as Required<PrinterMore>
}
