/** Short safety words beside the decision they belong to. Makers' sheets and local rules come first. */
export const FLIGHT_CAUTIONS = {
  props: 'Take the propellers off before you test motors or their direction on the bench.',
  pack: 'Charge at 1 C unless the pack’s maker says otherwise, on a surface that does not burn, and stay with it. Do not use a pack that is swollen, pierced or was in a crash.',
  firstFlight:
    'Weigh the finished aircraft and check its balance first. Make the first hover low, in calm air, far from people, and land at half the time worked out here.',
} as const
