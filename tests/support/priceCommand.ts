import { execFile } from 'node:child_process'
import { resolve } from 'node:path'
import { runPrice } from '../../src/cli/runPrice.ts'

export interface PriceRun {
  readonly code: number
  readonly out: string
  readonly err: string
}

/**
 * The command as a script's caller sees it, without starting a process for it. Paths count from
 * `base`.
 */
export async function runPriceHere(base: string, args: readonly string[]): Promise<PriceRun> {
  let out = ''
  let err = ''
  const code = await runPrice(args, {
    base,
    locale: 'en-GB',
    out: (text) => (out += text),
    err: (text) => (err += text),
    onProgress: () => undefined,
  })
  return { code, out, err }
}

/** The command as a process of its own, standing in `base`. */
export function startPrice(base: string, args: readonly string[]): Promise<PriceRun> {
  return new Promise((done) => {
    const child = execFile(
      process.execPath,
      [resolve('node_modules/tsx/dist/cli.mjs'), resolve('src/cli/price.ts'), ...args],
      { cwd: base, env: { ...process.env, LC_ALL: 'en_GB.UTF-8' } },
      (_, out, err) => done({ code: child.exitCode ?? -1, out, err }),
    )
  })
}
