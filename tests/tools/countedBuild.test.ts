import path from 'node:path'
import { build, type Plugin } from 'vite'
import { expect, test } from 'vitest'

/*
 * Censuses and measures kept in the browser are found again only under the name of the worker that made them
 * (`COUNTED_BUILD`). So that name has to change with whatever the worker computes, however deep it lies, or a new page
 * would show the figures of an old one.
 */

/**
 * Builds what names the worker, with a line put into one source file; gives the worker’s file name.
 */
async function workerName(changedFile: string | null): Promise<string> {
  let changes = 0
  const changing: Plugin = {
    name: 'change-one-file',
    enforce: 'pre',
    transform(code, id) {
      if (changedFile === null || !id.endsWith(changedFile)) return null
      changes += 1
      return `${code}\nglobalThis.changed = true\n`
    },
  }
  const result = await build({
    configFile: false,
    logLevel: 'silent',
    plugins: [changing],
    worker: { format: 'es', plugins: () => [changing] },
    build: {
      write: false,
      lib: { entry: path.resolve('src/jobs/browserRunner.ts'), formats: ['es'] },
    },
  })
  const names = [result]
    .flat()
    .flatMap((each) => ('output' in each ? each.output : []))
    .map(({ fileName }) => fileName)
    .filter((name) => name.includes('analyse.worker'))
  expect(names).toHaveLength(1)
  expect(changes > 0).toBe(changedFile !== null)
  return names[0] ?? ''
}

test('the worker gets another name with any change of a reader, a measure or the census, and no other', async () => {
  const name = await workerName(null)
  expect(await workerName(null)).toBe(name)
  const others: string[] = []
  for (const file of [
    'core/formats/number.ts',
    'core/mesh/bodies.ts',
    'core/census/cut/layerPlan.ts',
    'jobs/analyse.ts',
  ]) {
    others.push(await workerName(file))
  }
  expect(others).not.toContain(name)
  expect(new Set(others).size).toBe(others.length)
})
