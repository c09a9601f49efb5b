/** Numbers of unknown count, added at the end; `data` is longer than `length` says. */
export interface Growing<T extends Float64Array | Uint32Array> {
  data: T
  length: number
}

export function growingFloats(): Growing<Float64Array> {
  return { data: new Float64Array(1024), length: 0 }
}

export function growingWholes(): Growing<Uint32Array> {
  return { data: new Uint32Array(1024), length: 0 }
}

/** Makes room for `extra` more numbers, doubling so that adding n of them copies at most 2n. */
export function reserve(list: Growing<Float64Array> | Growing<Uint32Array>, extra: number): void {
  const needed = list.length + extra
  if (needed <= list.data.length) return
  const size = Math.max(needed, 2 * list.data.length)
  const larger = list.data instanceof Float64Array ? new Float64Array(size) : new Uint32Array(size)
  larger.set(list.data)
  list.data = larger
}

export function addFloats(list: Growing<Float64Array>, x: number, y: number, z: number): void {
  if (list.length + 3 > list.data.length) reserve(list, 3)
  list.data[list.length] = x
  list.data[list.length + 1] = y
  list.data[list.length + 2] = z
  list.length += 3
}

export function addWhole(list: Growing<Uint32Array>, value: number): void {
  if (list.length === list.data.length) reserve(list, 1)
  list.data[list.length++] = value
}
