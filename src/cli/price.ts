import { runPrice } from './runPrice.ts'

const { argv, env, stderr, stdout } = process

process.exitCode = await runPrice(argv.slice(2), {
  // Paths count from where the user stands; npm runs the script in the project's folder but
  // remembers.
  base: env['npm_lifecycle_event'] === 'price' ? (env['INIT_CWD'] ?? process.cwd()) : process.cwd(),
  locale: Intl.DateTimeFormat().resolvedOptions().locale,
  out: (text) => stdout.write(text),
  err: (text) => stderr.write(text),
  onProgress(text) {
    if (stderr.isTTY) stderr.write(`\r\u001b[K${text}`)
  },
})
