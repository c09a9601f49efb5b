import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { parseOptions } from './options.ts'
import type { PriceOptions } from './options.ts'
import { priceFile } from './priceFile.ts'
import { isFailed, reportTotal } from './report.ts'
import type { PartReport } from './report.ts'
import { tableOf } from './table.ts'
import { HELP, UsageError } from './usage.ts'

/** Paths count from where the user stands; npm runs the script in the project's folder but remembers. */
const { env } = process
const base =
  env['npm_lifecycle_event'] === 'price' ? (env['INIT_CWD'] ?? process.cwd()) : process.cwd()

process.exitCode = main(process.argv.slice(2))

/** Returns the exit code: 0 all priced, 1 some file failed, 2 bad usage. */
function main(args: readonly string[]): number {
  let options: PriceOptions | null
  try {
    const locale = Intl.DateTimeFormat().resolvedOptions().locale
    options = parseOptions(args, (path) => readFileSync(resolve(base, path), 'utf8'), locale)
  } catch (error) {
    if (!(error instanceof UsageError)) throw error
    console.error(error.message)
    return 2
  }
  if (options === null) {
    process.stdout.write(HELP)
    return 0
  }
  const { files, quantity, prices, json } = options
  const parts = files.flatMap((file) => priceOne(file, options))
  const report = { parts, total: reportTotal(parts, quantity, prices.currency) }
  process.stdout.write(json ? `${JSON.stringify(report, null, 2)}\n` : tableOf(report))
  return parts.some(isFailed) ? 1 : 0
}

function priceOne(file: string, options: PriceOptions): readonly PartReport[] {
  let bytes: Uint8Array
  try {
    bytes = readFileSync(resolve(base, file))
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    const message = `The file could not be read (${reason}). Check its path and that it may be read.`
    return [{ file, error: { code: 'unreadable', message } }]
  }
  const parts = priceFile(bytes, file, options, tellProgress)
  if (process.stderr.isTTY) process.stderr.write('\r\u001b[K')
  return parts
}

function tellProgress(file: string, fraction: number): void {
  if (process.stderr.isTTY) {
    process.stderr.write(`\r\u001b[K${file}: ${Math.floor(100 * fraction)} %`)
  }
}
