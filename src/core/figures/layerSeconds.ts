/**
 * Layers by how long they take without infill and travels: of those that take the least layer time
 * anyway only the sum matters, however much is added to them. The first layer and the others are
 * kept one by one, the first in front.
 */
export interface LayerSeconds {
  /** Of the sum; 0 where it is one by one. */
  readonly isLong: Uint8Array
  readonly longS: number
  readonly shorts: Uint32Array
  /** Of each short layer at its own speeds, and at the slowest speed. */
  readonly ownS: Float64Array
  readonly slowestS: Float64Array
  readonly leastS: number
  /** What `spreadOver` made. */
  readonly spreads: Map<ArrayLike<number> | null, LayerShares>
}

/** What is spread over the layers, as shares of all of it. */
export interface LayerShares {
  readonly long: number
  readonly shorts: Float64Array
}

/**
 * Something added to the layers, s: at its own speed and at the slowest, on the first layer apart.
 */
export interface Added {
  readonly shares: LayerShares
  readonly ownS: number
  readonly slowestS: number
  readonly firstOwnS: number
  readonly firstSlowestS: number
}

/**
 * Seconds of every layer at its own speeds and at the slowest; nothing that is added may be
 * negative.
 */
export function layerSeconds(
  ownS: Float64Array,
  slowestS: Float64Array,
  leastS: number,
): LayerSeconds {
  const isLong = Uint8Array.from(ownS, (own, i) => (i > 0 && own >= leastS ? 1 : 0))
  const shorts: number[] = []
  let longS = 0
  for (let i = 0; i < ownS.length; i++) {
    if (isLong[i] === 1) longS += ownS[i]!
    else shorts.push(i)
  }
  return {
    isLong,
    longS,
    shorts: Uint32Array.from(shorts),
    ownS: Float64Array.from(shorts, (i) => ownS[i]!),
    slowestS: Float64Array.from(shorts, (i) => slowestS[i]!),
    leastS,
    spreads: new Map(),
  }
}

/**
 * Spread as `over` has it, evenly where it is null; nothing at all where it is 0 all over. Made
 * once for each.
 */
export function spreadOver(layers: LayerSeconds, over: ArrayLike<number> | null): LayerShares {
  const known = layers.spreads.get(over)
  if (known) return known
  const { isLong, shorts } = layers
  let all = 0
  let long = 0
  for (let i = 0; i < isLong.length; i++) {
    const some = over === null ? 1 : over[i]!
    all += some
    if (isLong[i] === 1) long += some
  }
  const times = all > 0 ? 1 / all : 0
  const made = {
    long: long * times,
    shorts: Float64Array.from(shorts, (i) => (over === null ? 1 : over[i]!) * times),
  }
  layers.spreads.set(over, made)
  return made
}

/** Seconds of layers one by one, their changes included, the least layer time not yet asked. */
export interface LayerWork {
  /** At their own speeds. */
  readonly ownS: Float64Array
  /** With every line at the printer's slowest speed. */
  readonly slowestS: Float64Array
}

/** Seconds of all layers with what is added. */
export function sumLayers(layers: LayerSeconds, added: readonly Added[]): number {
  let longS = layers.longS
  for (const { ownS, shares } of added) longS += ownS * shares.long
  return longS + layersTime(shortLayers(layers, added), layers.leastS)
}

/** The layers that are kept one by one, with what is added. */
export function shortLayers(layers: LayerSeconds, added: readonly Added[]): LayerWork {
  const ownS = layers.ownS.slice()
  const slowestS = layers.slowestS.slice()
  for (const one of added) {
    const { shorts } = one.shares
    ownS[0]! += one.firstOwnS * shorts[0]!
    slowestS[0]! += one.firstSlowestS * shorts[0]!
    for (let i = 1; i < shorts.length; i++) {
      ownS[i]! += one.ownS * shorts[i]!
      slowestS[i]! += one.slowestS * shorts[i]!
    }
  }
  return { ownS, slowestS }
}

/**
 * Each layer its own time, or the least layer time where that is longer; never longer than at the
 * slowest speed.
 */
export function layersTime({ ownS, slowestS }: LayerWork, leastS: number): number {
  let timeS = 0
  for (let i = 0; i < ownS.length; i++) {
    timeS += Math.max(ownS[i]!, Math.min(leastS, slowestS[i]!))
  }
  return timeS
}
