import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { parseFrameOptions } from './frameOptions.ts'
import type { FrameOptions } from './frameOptions.ts'
import { frameTableOf } from './frameTable.ts'
import { loadFrame } from './loadFrame.ts'
import { parseOptions } from './options.ts'
import type { PriceOptions } from './options.ts'
import { priceAll } from './priceAll.ts'
import { priceFrame } from './priceFrame.ts'
import { isFailed, reportTotal } from './report.ts'
import type { PartReport } from './report.ts'
import { tableOf } from './table.ts'
import { HELP, UsageError } from './usage.ts'

/** Paths count from where the user stands; npm runs the script in the project's folder but remembers. */
const { env } = process
const base =
  env['npm_lifecycle_event'] === 'price' ? (env['INIT_CWD'] ?? process.cwd()) : process.cwd()

process.exitCode = await main(process.argv.slice(2))

/** Returns the exit code: 0 all priced, 1 some file or part of a frame failed, 2 bad usage. */
async function main(args: readonly string[]): Promise<number> {
  const locale = Intl.DateTimeFormat().resolvedOptions().locale
  let frame: FrameOptions | null
  let options: PriceOptions | null = null
  try {
    frame = parseFrameOptions(args)
    if (frame === null)
      options = parseOptions(args, (path) => readFileSync(resolve(base, path), 'utf8'), locale)
  } catch (error) {
    if (!(error instanceof UsageError)) throw error
    console.error(error.message)
    return 2
  }
  if (frame !== null) return printFrame(frame, locale)
  if (options === null) {
    process.stdout.write(HELP)
    return 0
  }
  return options.lines ? printLines(options) : printReport(options)
}

async function printReport(options: PriceOptions): Promise<number> {
  const parts: PartReport[] = []
  await priceAll(options, { base, onProgress: tellProgress }, (some) => parts.push(...some))
  clearProgress()
  const report = { parts, total: reportTotal(parts, options.quantity, options.prices.currency) }
  process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : tableOf(report))
  return parts.some(isFailed) ? 1 : 0
}

async function printFrame({ frame, json }: FrameOptions, locale: string): Promise<number> {
  const loaded = await loadFrame(frame, base, locale)
  if (!loaded.ok) {
    console.error(`${loaded.problem.message} ${loaded.problem.advice}`)
    return 1
  }
  const report = priceFrame(loaded.value, (name, fraction) =>
    tellProgress(`${name}: ${Math.floor(100 * fraction)} %`),
  )
  clearProgress()
  process.stdout.write(json ? `${JSON.stringify(report, null, 2)}\n` : frameTableOf(report))
  return loaded.value.complaints.length > 0 || report.parts.some(isFailed) ? 1 : 0
}

/** Keeps nothing: a line leaves as soon as its file and all before it are priced. */
async function printLines(options: PriceOptions): Promise<number> {
  let failed = false
  await priceAll(options, { base, onProgress: tellProgress }, (parts) => {
    failed ||= parts.some(isFailed)
    process.stdout.write(parts.map((part) => `${JSON.stringify(part)}\n`).join(''))
  })
  clearProgress()
  return failed ? 1 : 0
}

function tellProgress(text: string): void {
  if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${text}`)
}

function clearProgress(): void {
  if (process.stderr.isTTY) process.stderr.write('\r\u001b[K')
}
