import type { SeasonLine } from './side.ts'

/** Outcome of many made-up seasons, one entry each: pieces broken beyond the spares, per line. */
export interface PlayedSeasons {
  readonly seasons: number
  /** Breaks of line `l` in season `s` at `[s * lines + l]`. */
  readonly breaks: Uint32Array
}

const MOST_SEASONS = 2000
const FEWEST_SEASONS = 20
/**
 * Chances drawn in all. A page plays both frames on its own thread, where nothing may take 50 ms:
 * 1000 crashes of 12 parts, both frames, took 10 ms. With 4 million it was 81 ms (least of 15; Node
 * 20, shared virtual machine of two cores). Fewer seasons are played only where crashes are many,
 * and then the counts, and with them the band, scatter little.
 */
const DRAWS = 500_000

/**
 * Plays seasons crash by crash: crashes arrive with exponential gaps, and each crash breaks each
 * part with its own chance, so that one hard landing can break two. The same `random` gives the
 * same seasons.
 */
export function playSeasons(
  crashes: number,
  lines: readonly Pick<SeasonLine, 'breaksPerCrash'>[],
  random: () => number,
): PlayedSeasons {
  const wanted = Math.floor(DRAWS / (crashes * (lines.length + 1) + 1))
  const seasons = Math.min(MOST_SEASONS, Math.max(FEWEST_SEASONS, wanted))
  const breaks = new Uint32Array(seasons * lines.length)
  for (let season = 0; season < seasons; season++) {
    for (let at = gap(random); at < crashes; at += gap(random)) {
      lines.forEach(({ breaksPerCrash }, line) => {
        const slot = season * lines.length + line
        if (random() < breaksPerCrash) breaks[slot] = (breaks[slot] ?? 0) + 1
      })
    }
  }
  return { seasons, breaks }
}

/** Between two crashes, in units of the mean gap. 1 − u, since u may be 0. */
function gap(random: () => number): number {
  return -Math.log(1 - random())
}
