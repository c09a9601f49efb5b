import { writeSync } from 'node:fs'

/**
 * Runs the command with this process's arguments; says on the error stream how far the process's
 * peak memory went, bytes.
 */
process.on('exit', () => writeSync(2, String(process.resourceUsage().maxRSS * 1024)))
await import('../../src/cli/price.ts')
