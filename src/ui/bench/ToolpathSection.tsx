import { Button } from 'react-aria-components'
import { PATTERN_NAMES } from '../../core/data/limits.ts'
import type { PartFigures } from '../../core/model/figures.ts'
import type { Part } from '../../core/model/frame.ts'
import type { ToolpathFigures } from '../../core/model/toolpath.ts'
import { laidByPlace } from '../../core/toolpath/laidByPlace.ts'
import { formatHours, formatNumber } from '../../core/words/format.ts'
import { ledgerRows } from '../../state/store/derived.ts'
import { materialOf } from '../../state/store/materialOf.ts'
import type { ReadToolpath } from '../../state/store/types.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Section } from '../aircraft/Section.tsx'
import { LaidList, TakeReading } from './LaidReadings.tsx'
import { showLength, showMass, showNumber } from '../show.ts'

/** Printer files that were dropped, each beside the part it prints. */
export function ToolpathSection() {
  const all = useAppState((state) => state.toolpaths)
  const frameId = useAppState((state) => state.frame.id)
  const here = all.filter((each) => each.frameId === frameId)
  const summary = here.length === 0 ? 'none dropped yet' : `${here.length} read`
  return (
    <Section title="Printer file" summary={summary} onPaper={here.length > 0}>
      <div className="craft-full">
        <p className="hint">
          Drop the file your printer is sent (G-code, packed with gzip or not): what its moves lay
          stands here beside what was calculated. It is read from its moves alone and not kept; to
          see it again after a reload, drop it again.
        </p>
        {here.map((each) => (
          <ToolpathTable key={each.id} toolpath={each} />
        ))}
        <LaidList />
      </div>
    </Section>
  )
}

function ToolpathTable({ toolpath }: { readonly toolpath: ReadToolpath }) {
  const { figures, match, fileName } = toolpath
  const { takeRecipe, takeHabits, dismissToolpath } = useActions()
  const rows = useAppState(ledgerRows)
  const frame = useAppState((state) => state.frame)
  const row = rows.find(({ part }) => part.id === match?.item)
  const nameOf = (id: string) => frame.parts.find((part) => part.id === id)?.name
  const alike = (match?.alike ?? []).flatMap((id) => nameOf(id) ?? [])
  const lines = linesOf(
    figures,
    row?.part ?? null,
    row?.figures ?? null,
    (part) => materialOf(frame, part.materialId).densityGCm3.value,
  )
  return (
    <section className="toolpath" aria-label={`Printer file ${fileName}`}>
      <h4>{fileName}</h4>
      <p>
        {row === undefined
          ? 'It prints none of the parts here alone: several pieces on one bed are not told apart.'
          : `It prints ${[row.part.name, ...alike].join(' or ')}.`}
      </p>
      <table className="toolpath-table">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Printer file</th>
            {row === undefined ? null : <th scope="col">{row.part.name}, calculated</th>}
          </tr>
        </thead>
        <tbody>
          {lines.map(({ words, file, part, differs }) => (
            <tr key={words}>
              <th scope="row">{words}</th>
              <td>{file}</td>
              {row === undefined ? null : (
                <td>
                  {part}
                  {differs ? <span className="toolpath-differs"> differs</span> : null}
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {row?.sum ? (
        <p className="hint">
          Both columns are all the volume that is laid, times the density. With packing, flow and
          what the scale taught, support and brim off, one {row.part.name} is{' '}
          {showMass(row.sum.pieceG.mid)}.
        </p>
      ) : null}
      {figures.findings.map(({ message }) => (
        <p className="hint" key={message}>
          {message}
        </p>
      ))}
      {row === undefined || row.figures === null ? null : (
        <TakeReading
          toolpath={toolpath}
          partId={row.part.id}
          counted={row.figures}
          differing={lines.filter(({ differs }) => differs).map(({ words }) => words.toLowerCase())}
        />
      )}
      <div className="toolpath-tools">
        {row === undefined ? null : (
          <Button
            className="outlined"
            onPress={() => {
              takeRecipe(toolpath.id)
            }}
          >
            Give {row.part.name} this recipe
          </Button>
        )}
        <Button
          className="outlined"
          onPress={() => {
            takeHabits(toolpath.id)
          }}
        >
          Give the printer its habits and speeds
        </Button>
        <Button
          className="quiet"
          aria-label={`Put ${fileName} away`}
          onPress={() => {
            dismissToolpath(toolpath.id)
          }}
        >
          Put away
        </Button>
      </div>
    </section>
  )
}

interface Line {
  readonly words: string
  readonly file: string
  readonly part: string
  /** A setting that is not the same; figures follow from settings. */
  readonly differs: boolean
}

const NOT_TOLD = 'not told'

function linesOf(
  figures: ToolpathFigures,
  part: Part | null,
  counted: PartFigures | null,
  densityOf: (part: Part) => number,
): readonly Line[] {
  const { recipe } = figures
  const laid = laidByPlace(figures)
  const density = part === null ? null : densityOf(part)
  const plastic = (mm3: number) =>
    density === null ? `${formatNumber(mm3 / 1000)} cm³` : showMass((mm3 / 1000) * density)
  const figure = (words: string, file: number, own: number | undefined): Line => ({
    words,
    file: plastic(file),
    part: own === undefined ? '–' : plastic(own),
    differs: false,
  })
  const setting = <T extends number | string>(
    words: string,
    file: T | null,
    own: T | undefined,
    show: (value: T) => string,
  ): Line => ({
    words,
    file: file === null ? NOT_TOLD : show(file),
    part: own === undefined ? '–' : show(own),
    differs: file !== null && own !== undefined && show(file) !== show(own),
  })
  const length = (mm: number) => showLength(mm, 2)
  const count = (value: number) => showNumber(value, 0)
  const own = part?.recipe
  return [
    figure('Plastic, all of it', figures.depositMm3, counted?.depositMm3),
    figure('Walls and gap lines', laid.wallMm3, counted?.wallMm3),
    figure('Skins', laid.skinMm3, counted?.skinMm3),
    figure('Infill', laid.infillMm3, counted?.infillMm3),
    {
      words: 'Hours; the file’s without start',
      file: formatHours(figures.timeS),
      part: counted === null ? '–' : formatHours(counted.timeS.mid),
      differs: false,
    },
    setting('Layer height', recipe.layerMm, own?.layerMm, length),
    setting('First layer', recipe.firstLayerMm, own?.firstLayerMm, length),
    setting('Line width', recipe.lineMm, own?.lineMm, length),
    setting('Walls', recipe.walls, own?.walls, count),
    setting('Skins below', recipe.bottomSkins, own?.bottomSkins, count),
    setting('Skins on top', recipe.topSkins, own?.topSkins, count),
    setting('Infill share', recipe.infillPct, own?.infillPct, (pct) => `${showNumber(pct, 1)} %`),
    setting('Pattern', recipe.pattern, own?.pattern, (pattern) => PATTERN_NAMES[pattern]),
  ]
}
