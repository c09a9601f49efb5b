import { expect, test } from 'vitest'
import { listMeshFiles } from '../../src/core/formats/archive.ts'
import { packEntries } from '../../src/jobs/archive.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import { PROJECT_ENTRY } from '../../src/jobs/projectMark.ts'
import { problemOf } from '../support/problemOf.ts'

/* A saved frame whose first bytes were overwritten was told to be exported as STL, OBJ or 3MF. */
test('a spoilt saved frame is told as one', async () => {
  const saved = await packEntries([
    { path: PROJECT_ENTRY, content: JSON.stringify({ app: 'preweigh' }) },
    { path: 'meshes/aa', content: 'x'.repeat(400) },
  ])
  const bytes = new Uint8Array(await saved.arrayBuffer())
  const noStart = bytes.slice()
  noStart.fill(0xff, 0, 64)
  const noEnd = bytes.slice(0, 60)
  noEnd.fill(0, 26, 60)
  for (const spoilt of [noStart, noEnd]) {
    const outcome = await createInProcessRunner().run({
      kind: 'open',
      name: 'glider.preweigh',
      blob: new Blob([spoilt]),
    })
    const problem = outcome.ok ? null : outcome.problem
    expect(problem).toMatchObject({ code: 'bad-project' })
    expect(problem?.message).toContain('glider.preweigh')
    expect(problem?.advice).not.toMatch(/STL|OBJ|3MF/)
  }
})

test('a file of another name is still told what a mesh file is', () => {
  const noise = new Uint8Array(300).fill(0xff)
  expect(listMeshFiles(noise, 'arm.stl')).toHaveLength(1)
  expect(problemOf(() => listMeshFiles(noise, 'arm.preweigh')).code).toBe('bad-project')
})
