import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { parseOptions } from '../../../src/cli/options.ts'
import * as table from '../../../src/core/data/limits.ts'
import type { Frame } from '../../../src/core/model/frame.ts'
import { parseFrame } from '../../../src/state/storage/parseFrame.ts'
import { fillFrame } from '../../support/fullFrame.ts'
import { LIMIT_ROWS } from '../../support/limitRows.ts'
import { LIMIT_PLACES, TEXT_PLACES } from '../../support/limitPlaces.ts'
import { putInFrame, valueAt, withValueAt } from '../../support/putInFrame.ts'
import { startSession } from '../../support/session.ts'

/** Both ends, and just inside them. */
function inside({ min, max, whole }: table.Limits): readonly number[] {
  const off = whole ? 1 : (max - min) * 1e-6
  return [min, min + off, max - off, max]
}

/** Just outside, and between two whole numbers. */
function outside({ min, max, whole }: table.Limits): readonly number[] {
  const off = whole ? 1 : (max - min) * 1e-6
  return [min - off, max + off, ...(whole ? [min + 0.5] : [])]
}

const SRC = path.join(import.meta.dirname, '../../../src')

function sourcesOf(folder: string): readonly (readonly [string, string])[] {
  return readdirSync(path.join(SRC, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => [file, readFileSync(path.join(SRC, folder, file), 'utf8')] as const)
}

const PAGE = sourcesOf('ui')

let session: Awaited<ReturnType<typeof startSession>>
let full: Frame
beforeAll(async () => {
  session = await startSession()
  full = await fillFrame(session.actions, session.state)
})
afterAll(() => {
  session.actions.close()
})

describe('the table of limits', () => {
  test('has a place for each row and a row for each place', () => {
    expect(LIMIT_ROWS.map(([name]) => name).toSorted()).toEqual(
      Object.keys(LIMIT_PLACES).toSorted(),
    )
    expect(Object.keys(table.TEXT_LIMITS).toSorted()).toEqual(Object.keys(TEXT_PLACES).toSorted())
  })

  test('is tried on a frame that itself lies inside', () => {
    expect(opened(full).complaints).toEqual([])
    expect(session.state().failures).toEqual([])
  })
})

describe.each(LIMIT_ROWS)('%s', (name, limits) => {
  const place = LIMIT_PLACES[name] ?? { kept: [] }
  const { kept, keptTimes = 1, command, field } = place

  test('is what a saved frame takes, and else is brought in and said', () => {
    for (const at of kept) {
      for (const value of inside(limits)) {
        const { frame, complaints } = opened(withValueAt(full, at, value * keptTimes))
        expect([at, valueAt(frame, at), complaints]).toEqual([at, value * keptTimes, []])
      }
      for (const value of outside(limits)) {
        const { frame, complaints } = opened(withValueAt(full, at, value * keptTimes))
        expect([at, value, complaints]).toEqual([
          at,
          value,
          [expect.stringContaining('out of range')],
        ])
        expect(table.isWithin(table.times(limits, keptTimes), Number(valueAt(frame, at)))).toBe(
          true,
        )
      }
    }
  })

  test('is what the actions take, and else is refused and said', () => {
    const { actions, state } = session
    for (const at of kept) {
      for (const [values, isTaken] of [
        [inside(limits), true],
        [outside(limits), false],
      ] as const) {
        for (const value of values) {
          const before = state().frame
          actions.dismissNotice()
          if (place.act !== undefined) place.act(actions, before, value)
          else if (!putInFrame(actions, before, at, value * keptTimes)) continue
          const { frame, notice } = state()
          if (isTaken) {
            expect([at, valueAt(frame, at)]).toEqual([at, value * keptTimes])
            expect(notice).toBeNull()
          } else {
            expect([at, value, frame === before]).toEqual([at, value, true])
            expect(notice?.text).toMatch(/^Nothing was changed: /)
          }
        }
      }
    }
  })

  test('is what the command takes, and else is refused with the range', () => {
    if (command === undefined) return
    const run = (value: number) => parseOptions(['bar.stl', ...command(value)], () => '', 'en-GB')
    for (const value of inside(limits)) expect(() => run(value), String(value)).not.toThrow()
    for (const value of outside(limits)) {
      expect(() => run(value), String(value)).toThrow(`from ${limits.min} to ${limits.max}`)
    }
  })

  test('is what its field on the page takes', () => {
    const words = field === undefined ? name : field
    const files = PAGE.filter(([, text]) => text.includes(words ?? name)).map(([file]) => file)
    expect(files.length > 0, files.join()).toBe(words !== null)
  })
})

test('what one piece shows on a scale is taken as far as the table goes', () => {
  const { actions, state } = session
  const limits = table.READING_LIMITS.scaleG
  for (const [values, isTaken] of [
    [inside(limits), true],
    [outside(limits), false],
  ] as const) {
    for (const scaleG of values) {
      const before = state().frame
      const [, rod] = before.parts
      const at = { scaleG, pieces: 1, tareG: 0, stepG: 0.1, trusted: false }
      actions.weighPart(rod?.id ?? '', at)
      const { weighIn } = state().frame.parts[1] ?? {}
      if (isTaken) expect(weighIn?.massG).toBe(scaleG)
      else expect([scaleG, state().frame === before]).toEqual([scaleG, true])
    }
  }
})

describe.each(Object.entries(table.TEXT_LIMITS))('letters of %s', (name, most) => {
  const places = TEXT_PLACES[name as keyof typeof TEXT_PLACES]

  test('are as many in a saved frame as in the actions; one more is refused, or cut and said', () => {
    const { actions, state } = session
    for (const at of places) {
      const [fits, long] = [most, most + 1].map((letters) => 'x'.repeat(letters))
      expect(complaintsOf(withValueAt(full, at, fits)), at.join()).toEqual([])
      const complaints = complaintsOf(withValueAt(full, at, long))
      expect(complaints, at.join()).toEqual([expect.stringContaining('was too long and was cut')])
      for (const text of [fits, long]) {
        const before = state().frame
        actions.dismissNotice()
        if (!putInFrame(actions, before, at, text)) continue
        const { frame, notice } = state()
        if (text === fits) expect(valueAt(frame, at)).toBe(fits)
        else
          expect([frame === before, notice?.text]).toEqual([
            true,
            expect.stringMatching(/^Nothing/),
          ])
      }
    }
  })
})

/** That no material goes by an id of so many letters is another matter. */
const complaintsOf = (saved: Frame): readonly string[] =>
  opened(saved).complaints.filter((words) => !words.includes('which the frame does not hold'))

describe('nowhere else', () => {
  test('does a field of the page take its range from', () => {
    const row = String.raw`[A-Z_]+_LIMITS(\.\w+|\[\w+( as \w+)?\])?`
    const fromTable = new RegExp(
      String.raw`^(limits|${row}|(inPercent|times|narrowed)\(${row}(, [^()]+)?\))$`,
    )
    const others = PAGE.flatMap(([file, text]) =>
      [...text.matchAll(/\blimits=\{([^\n]*)\}\n/g)]
        .map(([, words = '']) => words)
        .filter((words) => !fromTable.test(words))
        .map((words) => `${file}: ${words}`),
    )
    expect(others).toEqual([])
    const boxes = PAGE.flatMap(([, text]) => text.match(/<NumberBox\b/g) ?? []).length
    const ranges = PAGE.flatMap(([, text]) => text.match(/\blimits=\{[^\n]*\}\n/g) ?? []).length
    expect(boxes).toBeGreaterThan(80)
    expect(ranges).toBe(boxes)
  })

  test('does an element of the page cut or clamp what is typed', () => {
    const cutting = /\b(maxLength|minLength|maxValue|minValue|max|min)=("|\{[-\d])|type="number"/
    const others = PAGE.flatMap(([file, text]) =>
      [...text.matchAll(/<\w+\b[^<>]*(?:=>[^<>]*)*>/g)]
        .map(([tag]) => tag)
        // What is dragged shows where its ends are.
        .filter((tag) => cutting.test(tag) && !tag.includes('type="range"'))
        .map((tag) => `${file}: ${tag}`),
    )
    expect(others).toEqual([])
  })

  test('does a schema or the command hold a number of its own', () => {
    const own = /\b(min|max)(Value|Length)\(\s*-?[\d.]|\b(lt|gt)Value\(\s*-?[1-9]/
    const files = [...sourcesOf('state'), ...sourcesOf('cli')]
    const others = files.flatMap(([file, text]) =>
      text
        .split('\n')
        .filter((line) => own.test(line.replaceAll('minLength(1)', '')))
        .map((line) => `${file}: ${line.trim()}`),
    )
    expect(others).toEqual([])
  })
})

function opened(frame: Frame) {
  const outcome = parseFrame(JSON.parse(JSON.stringify(frame)))
  if (!outcome.ok) throw new Error(outcome.problem.message)
  return outcome.value
}
