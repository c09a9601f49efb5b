import { formatAll } from './format.ts'

/**
 * A whole number, exact and with thousands grouped: 1204 → "1,204". In English, as sentences of the
 * core are.
 */
export function grouped(value: number): string {
  return formatAll(value, 0, 'en')
}

/** "1 triangle", "1,204 triangles". */
export function counted(value: number, one: string, many = `${one}s`): string {
  return `${grouped(value)} ${value === 1 ? one : many}`
}
