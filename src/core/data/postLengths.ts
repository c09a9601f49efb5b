/**
 * Lengths that threaded posts are sold in, rising. mm
 *
 * Common practice, no source.
 */
export const POST_LENGTHS_MM = [5, 6, 8, 10, 12, 15, 18, 20, 22, 25, 30, 35, 40] as const
