import type { Part } from '../../core/model/frame.ts'
import type { Bounds } from '../../core/model/mesh.ts'
import { useAppState } from '../appContext.ts'
import { bedWords } from './bedWords.ts'

/** Whether the part fits the printer as it lies. */
export function BedNote({ part, boundsMm }: { readonly part: Part; readonly boundsMm: Bounds }) {
  const printer = useAppState((state) => state.frame.printer)
  const { sentence, mark } = bedWords(boundsMm, part, printer)
  return <p className={mark === null ? 'hint' : 'caution'}>{sentence}</p>
}
