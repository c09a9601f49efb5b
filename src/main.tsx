import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { startBrowserSession } from './state/actions/browserSession.ts'
import { App } from './ui/App.tsx'
import { AppContext } from './ui/appContext.ts'
import '@fontsource-variable/encode-sans/wdth.css'
import './ui/styles/index.css'
import { applyKeptTheme } from './ui/theme.ts'

applyKeptTheme()

const place = document.getElementById('page')
if (place === null) throw new Error('index.html has no #page.')
createRoot(place).render(
  <StrictMode>
    <AppContext value={startBrowserSession()}>
      <App />
    </AppContext>
  </StrictMode>,
)
