import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import type { DrillRow } from '../core/drill/types.ts'
import { CURRENCY_CODES } from '../core/data/prices.ts'
import { withPrinters } from '../core/runs/runPrinters.ts'
import type { Lesson } from '../core/doubt/lessons.ts'
import type { Outcome } from '../core/model/problem.ts'
import { parseFrameOptions } from './frameOptions.ts'
import type { FrameOptions } from './frameOptions.ts'
import { bindingWords } from '../core/choose/sayings.ts'
import { nameIn } from './findReport.ts'
import { findFrame } from './findFrame.ts'
import type { FindAsk } from './findOptions.ts'
import type { FindReport } from './findReport.ts'
import { findTableOf } from './findTable.ts'
import { frameTableOf } from './frameTable.ts'
import { loadFrame, type LoadedFrame } from './loadFrame.ts'
import { reportHabits } from './habits.ts'
import { loadsOf } from './loadOptions.ts'
import { loadLessons } from './loadLessons.ts'
import { plasticIds } from './namedParts.ts'
import { parseOptions, withHabits } from './options.ts'
import type { PriceOptions } from './options.ts'
import { priceAll } from './priceAll.ts'
import { priceFrame } from './priceFrame.ts'
import { isFailed, reportTotal } from './report.ts'
import type { PartReport } from './report.ts'
import { tableOf } from './table.ts'
import { priceToolpath } from './priceToolpath.ts'
import { parseToolpathOptions } from './toolpathOptions.ts'
import type { ToolpathOptions } from './toolpathOptions.ts'
import { toolpathTableOf } from './toolpathTable.ts'
import { writeCoupon } from './writeCoupon.ts'
import { HELP, UsageError } from './usage.ts'

/** Where the command stands and speaks: a process, or a test. */
export interface PriceStage {
  /** Relative paths count from here. */
  readonly base: string
  /** BCP 47; decides the currency and how numbers are written. */
  readonly locale: string
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  /** Called with '' once there is nothing more to tell. */
  readonly onProgress: (text: string) => void
}

/** Returns the exit code: 0 all priced, 1 some file or part of a frame failed, 2 bad usage. */
export async function runPrice(args: readonly string[], stage: PriceStage): Promise<number> {
  const { base, locale, out, err } = stage
  let frame: FrameOptions | null
  let options: PriceOptions | null = null
  let toolpath: ToolpathOptions | null
  try {
    const readText = (path: string): string => readFileSync(resolve(base, path), 'utf8')
    toolpath = parseToolpathOptions(args)
    frame = toolpath === null ? parseFrameOptions(args, readText) : null
    if (toolpath === null && frame === null) options = parseOptions(args, readText, locale)
  } catch (error) {
    if (!(error instanceof UsageError)) throw error
    err(`${error.message}\n`)
    return 2
  }
  if (toolpath !== null) return printToolpath(toolpath, stage)
  if (frame !== null) return printFrame(frame, stage)
  if (options === null) {
    out(HELP)
    return 0
  }
  return options.lines ? printLines(options, stage) : printReport(options, stage)
}

async function printReport(options: PriceOptions, stage: PriceStage): Promise<number> {
  tellUnpriced(options, stage)
  const parts: PartReport[] = []
  await priceAll(options, stage, 'in order', (some) => parts.push(...some))
  stage.onProgress('')
  const report = {
    parts,
    total: reportTotal(parts, options.quantity, options.prices.currency),
    habits: reportHabits(options.printer.habits),
  }
  stage.out(options.json ? jsonOf(report) : tableOf(report, stage.locale))
  return parts.some(isFailed) ? 1 : 0
}

async function printToolpath(options: ToolpathOptions, stage: PriceStage): Promise<number> {
  const tell = (fraction: number): void =>
    stage.onProgress(`${options.toolpath}: ${Math.floor(100 * fraction)} %`)
  const read = await priceToolpath(options, stage.base, tell)
  stage.onProgress('')
  if (!read.ok) {
    stage.err(`${options.toolpath}: ${read.problem.message} ${read.problem.advice}\n`)
    return 1
  }
  const { report, refused } = read.value
  stage.out(options.json ? jsonOf(report) : toolpathTableOf(report, stage.locale))
  for (const { file, problem } of refused) {
    stage.err(`${file}: ${problem.message} ${problem.advice}\n`)
  }
  return refused.length > 0 ? 1 : 0
}

async function printFrame(
  {
    frame,
    json,
    full,
    habits,
    lessons,
    loads,
    spools,
    printers,
    stiffness,
    find,
    coupon,
  }: FrameOptions,
  stage: PriceStage,
): Promise<number> {
  const loaded = await loadFrame(frame, stage.base, stage.locale)
  if (!loaded.ok) {
    stage.err(`${loaded.problem.message} ${loaded.problem.advice}\n`)
    return 1
  }
  const taught: Outcome<readonly Lesson[]> =
    lessons === null
      ? { ok: true, value: [] }
      : await loadLessons(lessons, stage.base, stage.locale)
  if (!taught.ok) {
    stage.err(`${taught.problem.message} ${taught.problem.advice}\n`)
    return 1
  }
  const tell = (name: string, fraction: number): void =>
    stage.onProgress(`${name}: ${Math.floor(100 * fraction)} %`)
  const { frame: saved } = loaded.value
  const own = { ...saved, printer: withHabits(saved.printer, habits) }
  const beside = withPrinters(own, printers)
  const asTold = beside.length === 0 ? own : { ...own, printers: beside }
  let told: LoadedFrame = { ...loaded.value, frame: asTold }
  try {
    plasticIds(
      asTold,
      (spools ?? []).map(({ materialId }) => materialId),
      '--spools',
    )
    if (loads !== null) told = { ...told, loads: loadsOf(asTold, loads) }
  } catch (error) {
    if (!(error instanceof UsageError)) throw error
    stage.err(`${error.message}\n`)
    return 2
  }
  if (find !== null) {
    return printFound(told, { find, json, full }, stage, taught.value)
  }
  let holes: readonly DrillRow[] = []
  const report = priceFrame(
    told,
    tell,
    stage.locale,
    taught.value,
    full,
    stiffness ? 'all' : 'arms',
    spools,
    (rows) => {
      holes = rows
    },
  )
  stage.onProgress('')
  const written = coupon === null ? null : writeCoupon(resolve(stage.base, coupon), coupon, holes)
  if (written !== null && !written.ok) {
    stage.err(`${written.problem.message} ${written.problem.advice}\n`)
    return 1
  }
  stage.out(json ? jsonOf(report) : frameTableOf(report, stage.locale))
  return loaded.value.complaints.length > 0 || report.parts.some(isFailed) ? 1 : 0
}

/** Solutions as they are, none an empty list; why there is none goes to stderr too. */
async function printFound(
  loaded: LoadedFrame,
  { find, json, full }: { readonly find: FindAsk; readonly json: boolean; readonly full: boolean },
  stage: PriceStage,
  lessons: readonly Lesson[],
): Promise<number> {
  let found: FindReport
  try {
    const ask = { ...find, most: find.most ?? (json ? MOST_AS_JSON : MOST_IN_TABLE) }
    found = await findFrame(loaded, ask, stage.onProgress, lessons, full)
  } catch (error) {
    stage.onProgress('')
    if (!(error instanceof UsageError)) throw error
    stage.err(`${error.message}\n`)
    return 2
  }
  stage.onProgress('')
  const { solutions, count } = found
  stage.out(json ? jsonOf(solutions) : findTableOf(found, stage.locale))
  if (json && count > solutions.length) {
    stage.err(`${solutions.length} of ${count} solutions; "most" lists more.\n`)
  }
  if (solutions.length > 0) return 0
  if (json) {
    const why = bindingWords(found.bindings, found.currency, nameIn(found), stage.locale)
    stage.err(`Nothing found. ${why.join(' ').replaceAll('\u00a0', ' ')}\n`)
  }
  return 1
}

/** Solutions listed unless told otherwise: what a program reads, and what a person does. */
const MOST_AS_JSON = 500
const MOST_IN_TABLE = 12

/** Keeps nothing: a line leaves as soon as its file is priced. */
async function printLines(options: PriceOptions, stage: PriceStage): Promise<number> {
  tellUnpriced(options, stage)
  let failed = false
  await priceAll(options, stage, 'as they come', (parts) => {
    failed ||= parts.some(isFailed)
    stage.out(parts.map((part) => `${JSON.stringify(part)}\n`).join(''))
  })
  stage.onProgress('')
  return failed ? 1 : 0
}

/** On stderr, so that a cost without electricity is not taken for one. */
function tellUnpriced({ prices: { currency }, material }: PriceOptions, stage: PriceStage): void {
  if (CURRENCY_CODES.some((code) => code === currency)) return
  const isFree = material.pricePerKg.value === 0
  stage.err(
    `No prices are usual here in ${currency}: electricity and wear count as 0` +
      (isFree ? ', and so does filament: give --material its pricePerKg.\n' : '.\n'),
  )
}

const jsonOf = (report: unknown): string => `${JSON.stringify(report, null, 2)}\n`
