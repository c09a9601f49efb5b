import type { HoleUse } from '../model/drill.ts'
import { mm } from '../words/mm.ts'

/** What a hole is for, in two or three words. */
export function useWords(use: HoleUse): string {
  switch (use.kind) {
    case 'screw':
      return `${use.thread} passes`
    case 'tapped':
      return `${use.thread} thread`
    case 'insert':
      return `${use.thread} insert`
    case 'damper':
      return 'damper'
    case 'shaft':
      return `shaft of ${mm(use.shaftMm)} mm`
    case 'none':
      return 'nothing'
  }
}
