// What a frame with parts is shown by: nothing of it stands on the first screen, so that it is
// fetched after that.
import '../styles/late.css'

export { TotalsHead } from '../head/TotalsHead.tsx'
export { SheetPlace } from './SheetPlace.tsx'
