// A worker thread does not inherit its parent's way of running TypeScript, so it is set up again
// here.
import { register } from 'tsx/esm/api'

register()
await import('./price.worker.ts')
