/** A gigabyte of binary STL; a desktop browser's worker can still hold the mesh and its census. */
export const MAX_TRIANGLES = 20_000_000

/** All files unpacked from one ZIP or 3MF together: about five million triangles of 3MF text. */
export const MAX_UNPACKED_BYTES = 512 * 1024 * 1024

/**
 * DEFLATE cannot shrink below 1 : 1032 (RFC 1951: 258 bytes for two bits), so a larger promise is a
 * lie.
 */
export const MAX_DEFLATE_RATIO = 1032

/**
 * The largest number a 32-bit float holds (IEEE 754), and so the largest coordinate in a binary
 * STL.
 */
export const MAX_COORDINATE = 3.4028234663852886e38

/** Ear clipping takes n² steps, so one face with more corners than this would stall the page. */
export const MAX_FACE_CORNERS = 20_000

/** Elements inside elements in 3MF; the standard's own nesting is six deep. */
export const MAX_XML_DEPTH = 64

/** Components inside components in 3MF. */
export const MAX_COMPONENT_DEPTH = 32
