/** Standard gravity, m/s² (3rd CGPM, 1901; ISO 80000-3). */
export const GRAVITY = 9.80665

/** Air at sea level and 15 °C, kg/m³ (ISO 2533, standard atmosphere). */
export const AIR_DENSITY = 1.225
