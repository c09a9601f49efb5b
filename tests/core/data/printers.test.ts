import { describe, expect, it } from 'vitest'
import { isWithin, PRINTER_LIMITS } from '../../../src/core/data/limits.ts'
import { PRINTER_DEFAULT, PRINTER_FIELDS, PRINTERS } from '../../../src/core/data/printers.ts'

describe('printer classes', () => {
  it('have a field for every number that is typed', () => {
    const numbers = Object.entries(PRINTER_DEFAULT)
      .filter(([, value]) => typeof value === 'number')
      .map(([key]) => key)
    expect(PRINTER_FIELDS.map((field) => field.key).toSorted()).toEqual(numbers.toSorted())
  })

  it.each(PRINTERS.map((printer) => [printer.name, printer] as const))(
    '%s stays inside what may be typed',
    (_, printer) => {
      const outside = PRINTER_FIELDS.filter(
        ({ key }) => !isWithin(PRINTER_LIMITS[key], printer[key]),
      )
      expect(outside).toEqual([])
    },
  )

  it('start with the ordinary one', () => {
    expect(PRINTERS[0]).toBe(PRINTER_DEFAULT)
    expect(new Set(PRINTERS.map((printer) => printer.id)).size).toBe(PRINTERS.length)
  })

  it('explain every field in a whole sentence', () => {
    for (const { explain } of PRINTER_FIELDS) expect(explain).toMatch(/^[A-Z].{20,}\.$/)
  })
})
