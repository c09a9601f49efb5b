/** How panels of curves stand beside and below one another, with one axis for all. */
export interface CurvesLayout {
  /** Ends of the mass axis, g: the same in every panel. */
  readonly low: number
  readonly high: number
  readonly columns: number
  readonly panelPx: number
  readonly rowPx: number
  readonly heightPx: number
}

/** Room for the figures of the axis, and the least a panel wants. px */
const AXIS_PX = 44
const LEAST_PX = 108
const ROW_PX = 210
/** Above and below the outermost points, as a share of what they span. */
const ROOM = 0.08

export function curvesLayout(
  massesG: readonly number[],
  panels: number,
  widthPx: number,
): CurvesLayout {
  const least = Math.min(...massesG)
  const most = Math.max(...massesG)
  const room = Math.max(ROOM * (most - least), 0.05)
  const fit = Math.max(1, Math.floor((widthPx - AXIS_PX) / LEAST_PX))
  // As few rows as there is room for, and none of them with one panel left over.
  const rows = Math.ceil(panels / Math.min(Math.max(panels, 1), fit))
  const columns = Math.max(1, Math.ceil(panels / Math.max(rows, 1)))
  return {
    low: Math.max(0, least - room),
    high: most + room,
    columns,
    panelPx: (widthPx - AXIS_PX) / columns,
    rowPx: ROW_PX,
    heightPx: rows * ROW_PX,
  }
}
