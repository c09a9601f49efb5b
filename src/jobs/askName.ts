import type { Ask } from './protocol.ts'

/** What an ask is about, by the name that a problem with it is told under. */
export function askName(ask: Ask): string {
  switch (ask.kind) {
    case 'open':
    case 'toolpath':
      return ask.name
    case 'analyse':
    case 'mesh':
    case 'split':
    case 'poses':
    case 'shape':
    case 'look':
    case 'cut':
    case 'stiff':
    case 'sections':
      return ask.source.name
    case 'draw':
      return 'the drawing'
    case 'runs':
      return 'the print runs'
    case 'offers':
    case 'clashes':
    case 'ways':
    case 'repeats':
      return 'the joints'
    case 'holes':
      return 'the drill list'
    case 'pack':
    case 'unpack':
      return 'the project file'
  }
}
