import { useRef } from 'react'
import { flushSync } from 'react-dom'
import { createRoot } from 'react-dom/client'
import { expect, test } from 'vitest'
import { useWidth } from '../../src/ui/fields/useWidth.ts'

function Picture() {
  const place = useRef<HTMLElement>(null)
  return (
    <figure ref={place} style={{ width: '733px', padding: '0 16px', boxSizing: 'border-box' }}>
      {useWidth(place, 340)}
    </figure>
  )
}

/** Drawn for 340 px and blown up to the page it was huge for a moment. */
test('a picture is as wide as its place from the first time it is seen', () => {
  const home = document.body.appendChild(document.createElement('div'))
  const root = createRoot(home)
  flushSync(() => {
    root.render(<Picture />)
  })
  // No frame was painted in between.
  expect(home.textContent).toBe('701')
  root.unmount()
  home.remove()
})
