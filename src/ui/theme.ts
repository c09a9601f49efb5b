export type Theme = 'light' | 'dark'

const KEY = 'preweigh.theme'

/** The user's own choice; null while the system decides. */
function chosenTheme(): Theme | null {
  const kept = safely(() => localStorage.getItem(KEY))
  return kept === 'light' || kept === 'dark' ? kept : null
}

export function shownTheme(): Theme {
  const chosen = chosenTheme()
  if (chosen !== null) return chosen
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light'
}

/**
 * Sets the page's colours; choosing what the system has anyway hands the decision back to the
 * system.
 */
export function chooseTheme(theme: Theme): void {
  const system: Theme = matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light'
  if (theme === system) {
    safely(() => localStorage.removeItem(KEY))
    delete document.documentElement.dataset['theme']
  } else {
    safely(() => localStorage.setItem(KEY, theme))
    document.documentElement.dataset['theme'] = theme
  }
  for (const tell of listeners) tell()
}

/** Applies a choice kept from an earlier visit. */
export function applyKeptTheme(): void {
  const chosen = chosenTheme()
  if (chosen !== null) document.documentElement.dataset['theme'] = chosen
}

// Browsers that block storage throw on touching it; the page then simply follows the system.
function safely<T>(run: () => T): T | null {
  try {
    return run()
  } catch {
    return null
  }
}

/** Tells of every change of colours, by the user or by the system; returns how to stop. */
export function watchTheme(tell: (theme: Theme) => void): () => void {
  const system = matchMedia('(prefers-color-scheme: dark)')
  const changed = () => {
    tell(shownTheme())
  }
  system.addEventListener('change', changed)
  listeners.add(changed)
  return () => {
    system.removeEventListener('change', changed)
    listeners.delete(changed)
  }
}

const listeners = new Set<() => void>()
