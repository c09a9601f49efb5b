import type { PlateOutline } from './outline.ts'

/** A tenth of a micrometre: far finer than any cutter, and short to write. */
const DECIMALS = 4

/**
 * The outline as an SVG drawing in true millimetres: one unit of the drawing is 1 mm, its size is
 * the part's, y points up on the part and so is turned over for the screen (not mirrored). Outside
 * and holes are one path. `name` is shown as the title; `thicknessMm` is noted when given.
 */
export function outlineSvg(outline: PlateOutline, name: string, thicknessMm?: number): string {
  const [left, bottom] = outline.minMm
  const [right, top] = outline.maxMm
  const width = trim(right - left)
  const height = trim(top - bottom)
  const path = outlinePath(outline, DECIMALS)
  const plate = thicknessMm === undefined ? '' : ` Plate: ${trim(thicknessMm)} mm.`
  const words =
    `Outline ${trim(outline.cutHeightMm)} mm up the part, in true millimetres.${plate} ` +
    'The line is the finished edge: nothing is taken off for the width of the cut (kerf). ' +
    'Let the cutter run half its width outside the outline and inside the holes.'
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">
<title>${escape(name)}</title>
<desc>${words}</desc>
<path d="${path}" fill="none" stroke="#000" stroke-width="0.1" fill-rule="nonzero"/>
</svg>
`
}

/**
 * Outside and holes as one SVG path, 1 mm a unit, from the upper left corner of the outline's own
 * box.
 */
export function outlinePath({ contours, minMm, maxMm }: PlateOutline, decimals: number): string {
  const [left] = minMm
  const [, top] = maxMm
  return contours
    .map(({ points }) => {
      const corners = Array.from(
        { length: points.length / 2 },
        (_, i) =>
          `${trim((points[2 * i] ?? 0) - left, decimals)} ${trim(top - (points[2 * i + 1] ?? 0), decimals)}`,
      )
      return `M${corners.join('L')}Z`
    })
    .join('')
}

function trim(value: number, decimals = DECIMALS): string {
  return String(Number(value.toFixed(decimals)))
}

function escape(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll(/\p{Cc}/gu, '')
}
