import { describe, expect, test } from 'vitest'
import type { PartFigures, Range } from '../../../src/core/model/figures.ts'
import { ledgerRows } from '../../../src/state/store/derived.ts'
import { sphere } from '../../support/meshes.ts'
import { boxFile, fileOf, startSession } from '../../support/session.ts'
import type { IncomingFile } from '../../../src/state/store/types.ts'
import { writeStlBinary } from '../../support/writeMesh.ts'

type Stage = 'rough' | 'coarse' | 'done'

/** The figures first seen at each stage of the one part in the file. */
async function stagesOf(file: IncomingFile) {
  const { actions, store, state } = await startSession()
  const seen = new Map<Stage, PartFigures>()
  const marks = new Map<Stage, string>()
  store.subscribe(() => {
    const [row] = ledgerRows(state())
    if (row === undefined || row.figures === null) return
    const { work } = row
    const stage = work.kind === 'rough' && work.coarse !== null ? 'coarse' : work.kind
    if ((stage !== 'rough' && stage !== 'coarse' && stage !== 'done') || seen.has(stage)) return
    seen.set(stage, row.figures)
    marks.set(stage, row.basis)
  })
  await actions.addFiles([file])
  await actions.settled()
  return { seen, marks }
}

const width = ({ low, high }: Range) => high - low
const holds = ({ low, high }: Range, value: number) => low <= value && value <= high

describe('the figures of a tall part while its layers are counted', () => {
  test.each([
    ['a ball of 120 layers', fileOf('ball.stl', writeStlBinary(sphere(12, 32)))],
    ['a post of 200 layers', boxFile('post.stl', 18, 12, 40)],
  ])(
    '%s: the range shrinks from stage to stage and holds the final mass and hours',
    async (_, file) => {
      const { seen, marks } = await stagesOf(file)
      expect([...seen.keys()]).toEqual(['rough', 'coarse', 'done'])
      expect([...marks.values()]).toEqual(['rough', 'rough', 'census'])
      const [rough, coarse, done] = [...seen.values()] as [PartFigures, PartFigures, PartFigures]
      for (const figure of ['massG', 'timeS', 'cost'] as const) {
        expect(width(coarse[figure]), figure).toBeLessThan(width(rough[figure]))
        expect(width(done[figure]), figure).toBeLessThan(width(coarse[figure]))
        expect(holds(rough[figure], done[figure].mid), figure).toBe(true)
        expect(holds(coarse[figure], done[figure].mid), figure).toBe(true)
      }
    },
  )

  test('a flat part goes straight to its census', async () => {
    const { seen } = await stagesOf(boxFile('plate.stl', 30, 30, 3))
    expect([...seen.keys()]).toEqual(['rough', 'done'])
  })
})

test('figures of older settings are not given up for coarse ones', async () => {
  const { actions, store, state } = await startSession()
  await actions.addFiles([boxFile('post.stl', 12, 12, 40)])
  await actions.settled()
  const kinds = new Set<string>()
  store.subscribe(() => Object.values(state().work).forEach((work) => kinds.add(work.kind)))
  actions.updateParts([state().frame.parts[0]!.id], { recipe: { walls: 3 } })
  await actions.settled()
  expect([...kinds]).toEqual(['done'])
})
