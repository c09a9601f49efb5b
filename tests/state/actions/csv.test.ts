import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ledgerCsv } from '../../../src/state/actions/csv.ts'
import { plainBores, plainJoint, plateEnd } from '../../support/plainJoints.ts'
import { boxFile, startSession } from '../../support/session.ts'

/** A reader of its own, after RFC 4180, section 2. */
function parseCsv(csv: string): string[][] {
  const rows: string[][] = [[]]
  const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/y
  while (cell.lastIndex < csv.length) {
    const at = cell.lastIndex
    const found = cell.exec(csv)
    if (found === null) throw new Error(`no cell at ${at}: ${csv.slice(at, at + 40)}`)
    rows.at(-1)?.push(found[1]?.replaceAll('""', '"') ?? found[2] ?? '')
    if (found[3] !== ',') rows.push([])
  }
  return rows.slice(0, -1)
}

async function withPart() {
  const session = await startSession()
  await session.actions.addFiles([boxFile('a.stl', 12, 12, 4)])
  await session.actions.settled()
  const [part] = session.state().frame.parts
  return { ...session, id: part?.id ?? expect.fail('no part') }
}

describe('the ledger as CSV', () => {
  test('lists what is bought and what flies in all, the screws of joints among it', async () => {
    const { actions, state, id } = await withPart()
    actions.updateParts([id], { quantity: 2 })
    const end = (piece: 0 | 1) => plateEnd(id, plainBores([6], 6), piece === 0 ? 1 : -1, { piece })
    const joint = plainJoint('one', end(0), end(1), { fastener: { thread: 'M3', end: 'nut' } })
    actions.putAircraft({ joints: [joint] }, 'join')
    const [head = [], , total = [], ...rest] = parseCsv(ledgerCsv(state()).slice(1))
    const cell = (row: readonly string[] | undefined, name: string) => row?.[head.indexOf(name)]
    expect(rest.map(([name]) => name)).toEqual([
      'Screw M3 × 16, socket head, steel (ISO 4762)',
      'Locknut M3, steel (ISO 7040)',
      'All up, spares left out',
    ])
    expect(rest.every((row) => row.length === head.length)).toBe(true)
    // 1.2 g by the DIN 912 weight chart, 0.5 g by DIN 985.
    expect(rest.slice(0, 2).map((row) => [cell(row, 'Pieces'), cell(row, 'Mass (g)')])).toEqual([
      ['1', '1.200'],
      ['1', '0.500'],
    ])
    const allUp = Number(cell(rest[2], 'Mass (g)'))
    expect(allUp).toBeCloseTo(Number(cell(total, 'Mass (g)')) + 1.7, 3)
  })

  test('has a line a part and one for the frame, with the figures of the page', async () => {
    const { actions, state, id } = await withPart()
    actions.updateParts([id], { quantity: 4, spares: 1, mirrored: 2, note: 'one, "two"\nthree' })
    const csv = ledgerCsv(state())
    expect(csv.startsWith('\uFEFF"Part","File"')).toBe(true)
    const [head = [], line = [], total = [], ...rest] = parseCsv(csv.slice(1))
    expect(rest).toEqual([])
    expect(line).toHaveLength(head.length)
    expect(total).toHaveLength(head.length)
    const cell = (row: readonly string[], name: string) => row[head.indexOf(name)]
    expect(line.slice(0, 5)).toEqual(['a', 'a.stl', '4', '1', '2'])
    expect(cell(line, 'Note')).toBe('one, "two"\nthree')
    expect(cell(line, 'Figures from')).toBe('counted layers')
    // A block of 0.576 cm³: even solid PLA (1.24 g/cm³, four pieces) weighs 2.9 g.
    const mass = Number(cell(line, 'Mass (g)'))
    expect(mass).toBeGreaterThan(0.5)
    expect(mass).toBeLessThan(3.2)
    expect(Number(cell(line, 'Mass low (g)'))).toBeLessThan(mass)
    expect(Number(cell(line, 'Mass high (g)'))).toBeGreaterThan(mass)
    expect(cell(total, 'Mass (g)')).toBe(cell(line, 'Mass (g)'))
    expect(cell(total, 'Pieces')).toBe('4')
    expect(cell(total, 'Spare')).toBe('1')
  })

  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '\n=x', '＝1', "'x"])(
    'shows %j as the text it is',
    async (words) => {
      const { actions, state, id } = await withPart()
      actions.updateParts([id], { note: words })
      const [, line = []] = parseCsv(ledgerCsv(state()).slice(1))
      expect(line.at(-1)).toBe(`'${words}`)
    },
  )

  test('never begins a cell with what a spreadsheet runs, whatever the names and notes', async () => {
    const { actions, state, id } = await withPart()
    const nasty = fc.string({ unit: fc.constantFrom(...Array.from('=+-@\t\r\n",;\'a1|!')) })
    fc.assert(
      fc.property(nasty, nasty, (name, note) => {
        actions.updateParts([id], { name, note })
        actions.renameFrame(note)
        const rows = parseCsv(ledgerCsv(state()).slice(1))
        expect(new Set(rows.map((row) => row.length)).size).toBe(1)
        for (const cell of rows.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r\n]/)
        const kept = rows[1]?.at(-1) ?? ''
        expect(kept.startsWith("'") ? kept.slice(1) : kept).toBe(note)
      }),
      { seed: 41, numRuns: 300 },
    )
  })

  test('leaves figures empty that are not there yet', async () => {
    const { state, id } = await withPart()
    const { frame } = state()
    const [, line = []] = parseCsv(
      ledgerCsv({ frame, work: { [id]: { kind: 'queued' } } }).slice(1),
    )
    expect(line.slice(6)).toEqual(['none yet', ...Array.from({ length: 9 }, () => ''), ''])
  })
})
