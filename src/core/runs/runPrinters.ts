import type { Printer } from '../model/figures.ts'
import type { RunSettings } from '../model/runs.ts'
import type { Bed } from './types.ts'

/** The printers of a frame: its own, whose habits lay every piece, and others beside it. */
export interface Printers {
  readonly printer: Printer
  readonly printers?: readonly Printer[]
}

/** All of them, the frame's own first; of equal ids the first alone. */
export function allPrinters({ printer, printers = [] }: Printers): readonly Printer[] {
  const all = [printer, ...printers]
  return all.filter(({ id }, at) => all.findIndex((one) => one.id === id) === at)
}

/**
 * The printers beside the frame's own with more: a second one of a class is told apart by its
 * number.
 */
export function withPrinters(
  { printer: own, printers = [] }: Printers,
  more: readonly Printer[],
): readonly Printer[] {
  const beside = [...printers]
  for (const printer of more) beside.push(toldApart(printer, [own, ...beside]))
  return beside
}

/** The printer with an id and a name that none of these has. */
export function toldApart(printer: Printer, beside: readonly Printer[]): Printer {
  const isTaken = (id: string): boolean => beside.some((one) => one.id === id)
  if (!isTaken(printer.id)) return printer
  let number = 2
  while (isTaken(`${printer.id}-${number}`)) number++
  return { ...printer, id: `${printer.id}-${number}`, name: `${printer.name} ${number}` }
}

/** The printer of that id; the frame's own where there is none. */
export function printerOf(own: Printers, id: string | undefined): Printer {
  return allPrinters(own).find((one) => one.id === id) ?? own.printer
}

/** The bed of a printer as runs use it. */
export function bedOf(
  { bedMm }: Pick<Printer, 'bedMm'>,
  { marginMm }: Pick<RunSettings, 'marginMm'>,
): Bed {
  const [widthMm, depthMm, heightMm] = bedMm
  return { widthMm, depthMm, heightMm, marginMm }
}
