/**
 * Chance that each part is what the first damaging crash breaks, from the chances that one crash
 * breaks it, each on its own. Where one crash breaks several, each counts an equal share, so that
 * the chances sum to 1. All 0 where nothing breaks.
 */
export function firstBreakShares(chances: readonly number[]): readonly number[] {
  const damaging = 1 - chances.reduce((whole, chance) => whole * (1 - chance), 1)
  if (!(damaging > 0)) return chances.map(() => 0)
  return chances.map((chance, own) => {
    const others = brokenCounts(chances.filter((_, i) => i !== own))
    const share = others.reduce((sum, odds, count) => sum + odds / (count + 1), 0)
    return (chance * share) / damaging
  })
}

/**
 * Chance that exactly so many break, at that index (Poisson binomial, built up one part at a time).
 */
function brokenCounts(chances: readonly number[]): readonly number[] {
  const odds = [1]
  for (const chance of chances) {
    odds.push(0)
    for (let count = odds.length - 1; count >= 0; count--) {
      const one = count > 0 ? (odds[count - 1] ?? 0) : 0
      odds[count] = (odds[count] ?? 0) * (1 - chance) + one * chance
    }
  }
  return odds
}
