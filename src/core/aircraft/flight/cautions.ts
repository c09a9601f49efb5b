/**
 * Short safety words beside the decision they belong to. Makers' sheets and local rules come first.
 */
export const FLIGHT_CAUTIONS = {
  props: 'Take the propellers off before you test motors or their direction on the bench.',
  pack:
    'Charge at 1 C unless the pack’s maker says otherwise, on a surface that does not burn, ' +
    'and stay with it. Do not use a pack that is swollen, pierced or was in a crash.',
  firstFlight:
    'Weigh the finished aircraft and check its balance. Hover first low, in calm air, far from people; ' +
    'land at half the time given here. Local flying rules come first; ' +
    'in doubt ask an experienced pilot.',
  firstThrow:
    'Weigh the finished plane and check its balance point. Throw it first in calm air over long grass, ' +
    'far from people. Local flying rules come first; in doubt ask an experienced pilot.',
} as const
