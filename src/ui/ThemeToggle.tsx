import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import { chooseTheme, shownTheme, watchTheme, type Theme } from './theme.ts'

export function ThemeToggle() {
  const [theme, setTheme] = useState<Theme>(shownTheme)
  useEffect(() => watchTheme(setTheme), [])
  const other: Theme = theme === 'light' ? 'dark' : 'light'
  return (
    <Button
      className="quiet"
      onPress={() => {
        chooseTheme(other)
      }}
      aria-label={`Use ${other} colours`}
    >
      {other === 'dark' ? 'Dark' : 'Light'}
    </Button>
  )
}
