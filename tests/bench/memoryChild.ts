import { readFileSync } from 'node:fs'
import { readMesh } from '../../src/core/formats/read.ts'
import { measureMesh } from '../../src/core/mesh/measure.ts'

/**
 * Reads and measures the file named on the command line; prints how far that raised the process's
 * peak memory, bytes.
 */
const path = process.argv[2]!
const before = process.memoryUsage().rss
const bytes = readFileSync(path)
const { mesh } = readMesh(bytes, path)
const { volumeMm3 } = measureMesh(mesh, 1)
if (!(volumeMm3 > 0)) throw new Error('The part has no volume.')
process.stdout.write(String(process.resourceUsage().maxRSS * 1024 - before))
