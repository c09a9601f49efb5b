import { zipSync } from 'fflate'
import { expect, test } from 'vitest'
import { readMesh } from '../../src/core/formats/read.ts'
import { problemOf } from '../support/problemOf.ts'

// A ZIP that nothing was packed into was told as “22 bytes of binary”, and to export the part again.

test('a ZIP without a file in it is told as such', () => {
  expect(problemOf(() => readMesh(zipSync({}), 'empty.zip'))).toMatchObject({
    code: 'bad-archive',
    message: expect.stringContaining('no file in it'),
  })
})
