/** Cells of a draft by the solid model: what comes first, and whatever is held beside others. mm */
export const DRAFT_MM = 2

/** Strength over stress below it is too near what breaks (14 CFR 25.303, 23.2230: 1.5 on limit load). */
export const LEAST_SAFETY = 1.5
