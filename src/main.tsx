import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { createInProcessRunner } from './jobs/inProcess.ts'
import { createActions } from './state/actions.ts'
import { createDemoSource } from './state/demos.ts'
import { createMemoryStorage } from './state/memoryStorage.ts'
import { createAppStore } from './state/store.ts'
import { AppContext } from './ui/app-context.ts'
import { App } from './ui/App.tsx'
import { applyKeptTheme } from './ui/theme.ts'
import './ui/styles/index.css'

applyKeptTheme()

const store = createAppStore()
const actions = createActions(store, {
  runner: createInProcessRunner(),
  storage: createMemoryStorage(),
  demos: createDemoSource(document.baseURI, fetch.bind(globalThis)),
  now: Date.now,
  newId: () => crypto.randomUUID(),
  locale: navigator.language,
})

const place = document.getElementById('page')
if (place === null) throw new Error('index.html has no #page.')
createRoot(place).render(
  <StrictMode>
    <AppContext value={{ store, actions }}>
      <App />
    </AppContext>
  </StrictMode>,
)
void actions.restore()
