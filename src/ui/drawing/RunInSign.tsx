interface RunInSignProps {
  readonly x: number
  readonly y: number
  /** 20 px wide; smaller where there is little room. */
  readonly scale?: number
}

/** Two rings in each other, what they share filled; their middle at (x, y). */
export function RunInSign({ x, y, scale = 1 }: RunInSignProps) {
  return (
    <g className="run-in" transform={`translate(${x} ${y}) scale(${scale})`}>
      <path className="run-in-ground" d={RINGS} />
      <path className="run-in-rings" d={RINGS} />
      <path className="run-in-shared" d="M0 -4.5A6 6 0 0 1 0 4.5A6 6 0 0 1 0 -4.5Z" />
    </g>
  )
}

const RINGS = 'M-10 0A6 6 0 1 1 2 0A6 6 0 1 1 -10 0ZM-2 0A6 6 0 1 1 10 0A6 6 0 1 1 -2 0Z'
