import { readFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import optimizeLocales from '@react-aria/optimize-locales-plugin'
import react from '@vitejs/plugin-react'
import { playwright } from '@vitest/browser-playwright'
import { defineConfig } from 'vitest/config'
import { browserFlags, findBrowser } from './src/tools/browser.mjs'
import { licencesPlugin } from './src/tools/licencesPlugin.ts'
import { offlinePlugin, policyPlugin } from './src/tools/sitePlugins.ts'

/**
 * Locales whose component texts are shipped; numbers and money follow any locale, since the browser
 * formats them.
 */
const LOCALES = ['en-US', 'en-GB', 'de-DE', 'fr-FR', 'es-ES', 'it-IT', 'nl-NL', 'pl-PL']

// Everything from npm that runs in the browser is bundled at once: a package found late would
// reload the tests.
const manifest = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as {
  dependencies: Record<string, string>
}
const BUNDLED = [
  ...Object.keys(manifest.dependencies),
  'axe-core',
  'fast-check',
  'react-dom/client',
  'react/jsx-dev-runtime',
  'react/jsx-runtime',
  'three/addons/controls/OrbitControls.js',
  'zustand/vanilla',
  'zustand/react/shallow',
]

export default defineConfig({
  // Relative, so that the built app can be served from any folder of any host.
  base: './',
  plugins: [
    react(),
    { ...optimizeLocales.vite({ locales: LOCALES }), enforce: 'pre', apply: 'build' },
    licencesPlugin(),
    policyPlugin(),
    offlinePlugin(),
  ],
  worker: { format: 'es' },
  optimizeDeps: { include: BUNDLED },
  // The 3D view's chunk is big by nature and loaded late; what counts is the shell, see
  // sizeLimit.config.mjs.
  build: {
    target: 'es2023',
    sourcemap: true,
    chunkSizeWarningLimit: 800,
    rolldownOptions: {
      checks: { pluginTimings: false },
      // What a first visit needs comes as one file: split for the sheets that share it, it packs 4
      // kB worse.
      output: { codeSplitting: { groups: [{ name: 'shell', tags: ['$initial'] }] } },
    },
  },
  test: {
    // As many files at once as there are cores; vitest keeps one back, which of two is half of
    // them.
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          environment: 'node',
          // Generous: it only matters to a test that hangs, and a busy machine must not fail one
          // that passes.
          testTimeout: 480_000,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/app/**'],
          // Files share a process and its modules: core is pure, so nothing of one is left for the
          // next, and starting afresh for each took two thirds of the time (25 s of 43 quick files'
          // processor time, 9 s this way).
          isolate: false,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          testTimeout: 120_000,
          include: ['tests/browser/**/*.test.{ts,tsx}'],
          sequence: { groupOrder: 0 },
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({ launchOptions: launchOptions() }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
      {
        extends: true,
        test: {
          name: 'app',
          environment: 'node',
          include: ['tests/app/**/*.test.ts'],
          globalSetup: 'tests/support/serveApp.ts',
          setupFiles: 'tests/support/weighOnce.ts',
          // Files share a process, and so a browser: see `support/app.ts`. After the others, which
          // would part them.
          isolate: false,
          sequence: { groupOrder: 1 },
          // One more than there are cores: a page waits a good part of its time, for a frame, a
          // timer, a disk.
          maxWorkers: availableParallelism() + 1,
          testTimeout: 300_000,
          // As generous: a poll gives up after a second by itself, which says more of the machine
          // than of the page.
          expect: { poll: { timeout: 120_000 } },
          hookTimeout: 300_000,
        },
      },
    ],
  },
})

function launchOptions() {
  const executablePath = findBrowser()
  return { args: browserFlags(), ...(executablePath === undefined ? {} : { executablePath }) }
}
