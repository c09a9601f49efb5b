/** How far the thrust goes round, with the words for it. */
export interface ThrustVerdict {
  readonly level: 'red' | 'amber' | 'green'
  readonly words: string
}

/**
 * Bounds of the verdict: 2 hovers near half throttle (ArduPilot wiki); a survey craft flies at
 * 1.42, a lifter down to 1.9.
 */
const AMBER_FROM = 1.5
const GREEN_FROM = 2

/** Judges full thrust over all-up weight: below 1.5 red, below 2 amber, from 2 green. */
export function thrustVerdict(thrustToWeight: number): ThrustVerdict {
  const ratio = thrustToWeight.toFixed(2)
  if (thrustToWeight < 1) {
    return { level: 'red', words: `${ratio} : 1. It does not lift its own weight.` }
  }
  if (thrustToWeight < AMBER_FROM) {
    return {
      level: 'red',
      words:
        `${ratio} : 1, below 1.5. Too little is left to climb, to hold in wind and to stop a fall: ` +
        'shed mass or fit stronger motors.',
    }
  }
  if (thrustToWeight < GREEN_FROM) {
    return {
      level: 'amber',
      words: `${ratio} : 1, between 1.5 and 2. It flies gently in calm air and has little in hand.`,
    }
  }
  return { level: 'green', words: `${ratio} : 1, at least 2. Enough in hand for calm camera work.` }
}
