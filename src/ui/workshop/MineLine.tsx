import { Button } from 'react-aria-components'
import { apartFrom, type MineKind } from '../../state/store/workshop.ts'
import { useActions, useAppState } from '../appContext.ts'
import { useMine } from './useMine.ts'

const WORDS: Readonly<Record<MineKind, { readonly mine: string; readonly apart: string }>> = {
  printer: {
    mine: 'Your printer: what you change here, new frames start with.',
    apart: 'This frame has a printer of its own; what you change here stays with the frame.',
  },
  printers: {
    mine: 'Your other printers: new frames start with them.',
    apart: 'Some printers differ between this frame and yours.',
  },
  prices: {
    mine: 'Your prices: what you change here, new frames start with.',
    apart: 'This frame has prices of its own; what you change here stays with the frame.',
  },
  materials: {
    mine: 'Your materials: what you add or change here, new frames start with.',
    apart: 'Some materials differ between this frame and yours.',
  },
  roles: {
    mine: 'Your roles: new frames start with them.',
    apart: 'Some roles differ between this frame and yours.',
  },
}

/** Whether a frame uses what is the builder's, and the two ways to make it so. */
export function MineLine({ kind }: { readonly kind: MineKind }) {
  const mine = useMine()
  const frame = useAppState((state) => state.frame)
  const { keepAsMine, takeMine } = useActions()
  const { frameOnly, mineOnly } = apartFrom(frame, mine, kind)
  const { mine: same, apart } = WORDS[kind]
  return (
    <div className="mine-line" role="group" aria-label="Yours">
      <p className="hint">{frameOnly || mineOnly ? apart : same}</p>
      {frameOnly ? (
        <Button
          className="quiet"
          onPress={() => {
            keepAsMine(kind)
          }}
        >
          Keep as mine
        </Button>
      ) : null}
      {mineOnly ? (
        <Button
          className="quiet"
          onPress={() => {
            takeMine(kind)
          }}
        >
          Take mine
        </Button>
      ) : null}
    </div>
  )
}
