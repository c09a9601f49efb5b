/**
 * One measured hover or stand run: thrust and electrical power of one propeller with its motor and
 * controller.
 */
export interface HoverRow {
  readonly name: string
  readonly propDiameterMm: number
  readonly thrustG: number
  readonly electricalW: number
  /** Whether the efficiency was fitted to it; the others only checked the fit. */
  readonly fitted: boolean
}

/*
 * Small propellers: 5.1 inch from a maker's table in a public course note; 3 inch to 31 mm from
 * EricPedley/wing_optimization, multirotor/data (sweeps f1404 @73705aa, f1204 and m0803ii @56740ae,
 * m1104 @19c8ae1, ex1103 @d12778f). Whole craft, a share for each propeller: nano craft
 * IMRCLab/crazyflie-system-id data/bitcraze2021 @b1de46a and Bitcraze crazyflie-firmware,
 * pwm-to-thrust @25094c66; 1.2 to 2.9 kg Russell et al., NASA/TM-2018-219758, runs 28/11, 27/9,
 * 29/12, 119/11.
 */
const ROWS: readonly (readonly [
  name: string,
  diameterMm: number,
  thrustG: number,
  electricalW: number,
  fitted: boolean,
])[] = [
  ['31 mm, three blades', 31, 5.9, 3.3, true],
  ['35 mm, three blades', 35, 8.4, 4.7, false],
  ['40.6 mm', 40.6, 12.7, 5.1, true],
  ['nano craft of 41 g, brushed', 46, 40.96 / 4, 11.2 / 4, true],
  ['nano rig of 28.6 g, brushed', 46.26, 28.6 / 4, 7.74 / 4, false],
  ['65 mm', 65, 53.2, 14.8, true],
  ['3 inch on two cells', 76.2, 55.05, 14.5, true],
  ['3 inch, three blades, on two cells', 76.2, 63.5, 18.4, false],
  ['3 inch, three blades, on four cells', 76.2, 101.1, 25, true],
  ['5.1 inch, three blades', 129.5, 536.8, 153.5, true],
  ['5.1 inch, three blades, at more throttle', 129.5, 928.2, 337.8, false],
  ['quadrotor of 1.51 kg', 254, 1510 / 4, 184.44 / 4, true],
  ['quadrotor of 1.22 kg', 238.8, 1223 / 4, 172.07 / 4, true],
  ['quadrotor of 1.28 kg', 243.8, 1279 / 4, 142.9 / 4, true],
  ['quadrotor of 2.91 kg', 381, 2913 / 4, 281.52 / 4, true],
]

/** Measured electrical power in or near hover, smallest propeller first. */
export const HOVER_ROWS: readonly HoverRow[] = ROWS.map(
  ([name, propDiameterMm, thrustG, electricalW, fitted]) => ({
    name,
    propDiameterMm,
    thrustG,
    electricalW,
    fitted,
  }),
)
