import { FrameMenu } from './FrameMenu.tsx'
import { FrameName } from './FrameName.tsx'
import { HistoryButtons } from './HistoryButtons.tsx'
import { PickButton } from '../intake/PickButton.tsx'
import type { Intake } from '../intake/readDrop.ts'
import { StorageLine } from './StorageLine.tsx'
import { ThemeToggle } from './ThemeToggle.tsx'

interface TopBarProps {
  readonly onIntake: (intake: Intake) => void
  /** Without parts there is nothing to undo, save or add to. */
  readonly hasParts: boolean
}

export function TopBar({ onIntake, hasParts }: TopBarProps) {
  return (
    <header className="top-bar">
      {hasParts ? <h1 className="wordmark">Preweigh</h1> : <p className="wordmark">Preweigh</p>}
      {hasParts ? <FrameName /> : null}
      <StorageLine hasParts={hasParts} />
      <nav aria-label="Frame">
        {hasParts ? (
          <PickButton className="quiet" onPick={onIntake}>
            Add parts
          </PickButton>
        ) : (
          <PickButton className="quiet" onPick={onIntake} accept=".preweigh,.zip">
            Open saved frame
          </PickButton>
        )}
        <HistoryButtons />
        <FrameMenu />
      </nav>
      <ThemeToggle />
    </header>
  )
}
