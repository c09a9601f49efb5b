// As worker.mjs, for the layers that --find has to count.
import { register } from 'tsx/esm/api'

register()
await import('./count.worker.ts')
