import { Button } from 'react-aria-components'
import type { CalibrationPiece } from '../../core/calibration/walk.ts'
import { blockMesh, CALIBRATION_WALK } from '../../core/calibration/walk.ts'
import { writeStl } from '../../core/formats/writeStl.ts'
import { useActions } from '../appContext.ts'
import { Sheet } from '../fields/Sheet.tsx'
import { download } from '../head/download.ts'
import { showNumber, showLength, showMm } from '../show.ts'
import { lengthUnit } from '../../core/words/shownUnits.ts'
import { formatMass } from '../../core/words/format.ts'

interface CalibrationSheetProps {
  readonly isOpen: boolean
  readonly onClose: () => void
}

/** Two prints to weigh and to time, and what each of them tells. */
export function CalibrationSheet({ isOpen, onClose }: CalibrationSheetProps) {
  const { loadPieces } = useActions()
  const begin = () => {
    const pieces = CALIBRATION_WALK.flatMap((print) => print.pieces)
    void loadPieces(
      'Calibration',
      pieces.map((piece) => ({
        file: { name: `${piece.name.toLowerCase()}.stl`, blob: stlOf([piece]) },
        name: piece.name,
        note: piece.tells,
        recipe: piece.recipe,
      })),
    )
    onClose()
  }
  return (
    <Sheet title="Calibrate in two prints" isOpen={isOpen} onClose={onClose}>
      <p className="hint">
        Some two hours and {formatMass(30)} of plastic tell what your spool and your printer do
        differently from what is calculated, one thing from the other. Every line as wide as typed:{' '}
        {showNumber(0.4, 1)} mm.
      </p>
      {CALIBRATION_WALK.map((print) => (
        <section key={print.fileName}>
          <h3>{print.name}</h3>
          <p>{print.tells}</p>
          <ul>
            {print.pieces.map((piece) => (
              <li key={piece.name}>
                <strong>{piece.name}</strong>, {settingsWords(piece)}. {piece.tells}
              </li>
            ))}
          </ul>
          <Button
            className="outlined"
            onPress={() => {
              download(stlOf(print.pieces), print.fileName.replace(/\.stl$/, ''), '.stl')
            }}
          >
            Download STL
          </Button>
        </section>
      ))}
      <h3>Then</h3>
      <p>
        Make a frame of the three pieces, choose the plastic they were printed in, weigh each under
        “Weigh-in”, and type the time of each print under “Clock”, both on Bench. What they teach
        holds for every frame of this spool on this printer.
      </p>
      <Button className="outlined" onPress={begin}>
        Make a frame of them
      </Button>
    </Sheet>
  )
}

function stlOf(pieces: readonly CalibrationPiece[]): Blob {
  return new Blob([writeStl(blockMesh(pieces))], { type: 'model/stl' })
}

function settingsWords({ sizeMm, recipe }: CalibrationPiece): string {
  const { walls, topSkins, infillPct, pattern, layerMm } = recipe
  const skins = topSkins === 0 ? 'no top, no bottom' : `${topSkins} top and bottom layers`
  const infill = infillPct === 0 ? 'hollow' : `${infillPct} % ${pattern}`
  return (
    `${sizeMm.map((mm) => showMm(mm, 1)).join(' × ')} ${lengthUnit()}, ` +
    `${walls} wall, ${skins}, ${infill}, ${showLength(layerMm, 2)} layers`
  )
}
