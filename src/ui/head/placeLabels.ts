/** A name that stands beside its mark. */
export interface RulerLabel {
  readonly id: string
  readonly words: string
  /** Of the mark, px from the ruler's left end. */
  readonly xPx: number
  /** On which side of the mark it would rather stand. */
  readonly side: 'left' | 'right'
}

export interface PlacedLabel extends RulerLabel {
  /** 0 is the line next to the scale. */
  readonly line: 0 | 1
}

/** Of letters of 12 px, on average; a label is never measured, so that placing it costs nothing. */
const LETTER_PX = 6.3
const GAP_PX = 10

/**
 * Finds room for each name in the order given: on its own side or the other, on the line next to
 * the scale or the one above. A name without room is left out; its mark stays. `marksPx`: other
 * marks that no name may lie on.
 */
export function placeLabels(
  labels: readonly RulerLabel[],
  widthPx: number,
  marksPx: readonly number[] = [],
): readonly PlacedLabel[] {
  const placed: (PlacedLabel & { readonly from: number; readonly to: number })[] = []
  for (const label of labels) {
    const widePx = LETTER_PX * label.words.length + GAP_PX
    const sides =
      label.side === 'left' ? (['left', 'right'] as const) : (['right', 'left'] as const)
    const found = ([0, 1] as const)
      .flatMap((line) => sides.map((side) => ({ line, side })))
      .map(({ line, side }) => ({
        ...label,
        line,
        side,
        from: side === 'left' ? label.xPx - widePx : label.xPx,
        to: side === 'left' ? label.xPx : label.xPx + widePx,
      }))
      .find(
        ({ line, from, to }) =>
          from >= 0 &&
          to <= widthPx &&
          placed.every((other) => other.line !== line || other.to <= from || other.from >= to) &&
          // No name over the mark of another.
          (line === 1 ||
            [...labels.filter(({ id }) => id !== label.id).map(({ xPx }) => xPx), ...marksPx].every(
              (xPx) => xPx <= from || xPx >= to,
            )),
      )
    if (found !== undefined) placed.push(found)
  }
  return placed.map(({ id, words, xPx, side, line }) => ({ id, words, xPx, side, line }))
}
