import { useEffect, useState } from 'react'
import { chooseTheme, shownTheme, watchTheme, type Theme } from '../theme.ts'
import { PlainButton } from '../fields/PlainButton.tsx'

export function ThemeToggle() {
  const [theme, setTheme] = useState<Theme>(shownTheme)
  useEffect(() => watchTheme(setTheme), [])
  const other: Theme = theme === 'light' ? 'dark' : 'light'
  return (
    <PlainButton
      className="quiet"
      onPress={() => {
        chooseTheme(other)
      }}
      aria-label={`Use ${other} colours`}
    >
      {other === 'dark' ? 'Dark' : 'Light'}
    </PlainButton>
  )
}
