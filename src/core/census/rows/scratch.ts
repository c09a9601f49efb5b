/**
 * Working space used again and again. Regions are made by the thousand, and fresh zeroed memory for
 * each cost a third of the whole count. What is in it is only good until the next call for the same
 * space.
 */
export interface Scratch {
  floats(length: number): Float64Array
  ints(length: number): Int32Array
}

export function createScratch(): Scratch {
  let floats = new Float64Array(4096)
  let ints = new Int32Array(4096)
  return {
    floats(length) {
      if (floats.length < length) floats = new Float64Array(length * 1.5)
      return floats
    },
    ints(length) {
      if (ints.length < length) ints = new Int32Array(length * 1.5)
      return ints
    },
  }
}
