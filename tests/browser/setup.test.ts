import { expect, test } from 'vitest'

test('the test browser draws WebGL 2 without a GPU and starts module workers', async () => {
  const gl = document.createElement('canvas').getContext('webgl2')
  expect(gl?.getError()).toBe(0)

  const script = new Blob(['postMessage("here")'], { type: 'text/javascript' })
  const worker = new Worker(URL.createObjectURL(script), { type: 'module' })
  const said = await new Promise((resolve) => {
    worker.addEventListener('message', (event) => resolve(event.data), { once: true })
  })
  worker.terminate()
  expect(said).toBe('here')
})
