/**
 * Runs both in turns, so that whatever else the machine does falls on both, and returns the median
 * of each in ms by a clock of the two below.
 */
export async function alternate(
  rounds: number,
  ours: () => unknown,
  baseline: () => unknown,
  msOf: (run: () => unknown) => number | Promise<number>,
): Promise<{ oursMs: number; baselineMs: number }> {
  const times: [number[], number[]] = [[], []]
  for (let round = 0; round <= rounds; round++) {
    const sample = [await msOf(ours), await msOf(baseline)] as const
    // The first round warms both up.
    if (round > 0) sample.forEach((ms, i) => times[i]!.push(ms))
  }
  return { oursMs: median(times[0]), baselineMs: median(times[1]) }
}

/** ms of one run by the clock on the wall. */
export async function clock(run: () => unknown): Promise<number> {
  const start = performance.now()
  await run()
  return performance.now() - start
}

/**
 * ms of processor time of one run that waits for nothing, with its compiling and clearing of
 * memory.
 */
export function busy(run: () => unknown): number {
  const start = process.cpuUsage()
  run()
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1000
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}

/** Slope of the straight line through log–log points (least squares): 1 is proportional. */
export function logSlope(points: readonly (readonly [x: number, y: number])[]): number {
  const logs = points.map(([x, y]) => [Math.log(x), Math.log(y)] as const)
  const mean = (k: 0 | 1): number => logs.reduce((sum, p) => sum + p[k], 0) / logs.length
  const [mx, my] = [mean(0), mean(1)]
  const over = logs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0)
  const under = logs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0)
  return over / under
}
