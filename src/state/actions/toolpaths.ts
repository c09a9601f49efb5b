import type { StoreApi } from 'zustand/vanilla'
import type { Limits, RecipeNumber } from '../../core/data/limits.ts'
import {
  isWithin,
  PRINTER_LIMITS,
  PRINTER_MORE_LIMITS,
  RECIPE_LIMITS,
} from '../../core/data/limits.ts'
import type { Printer } from '../../core/model/figures.ts'
import type { Recipe } from '../../core/model/settings.ts'
import type { ToolpathFigures } from '../../core/model/toolpath.ts'
import { toldRecipe } from '../../core/toolpath/toldRecipe.ts'
import type { ToolpathPart } from '../../jobs/asks/toolpathAsks.ts'
import type { Runner } from '../../jobs/runner.ts'
import type { Meshes } from '../storage/meshes.ts'
import type { Actions } from './types.ts'
import type { AppState, IncomingFile } from '../store/types.ts'
import { takenAs } from './analysis.ts'
import { patchParts } from './edits.ts'
import type { History } from './history.ts'
import { plainName, type Intake } from './intake.ts'

interface ToolpathsDeps {
  readonly store: StoreApi<AppState>
  readonly runner: Runner
  readonly history: History
  readonly meshes: Meshes
  readonly intake: Intake
  readonly newId: () => string
}

interface Toolpaths extends Pick<Actions, 'takeRecipe' | 'takeHabits' | 'dismissToolpath'> {
  /**
   * Reads a printer's file and keeps what it comes to for this visit; what goes wrong lands in
   * `failures`.
   */
  readToolpath(file: IncomingFile): Promise<void>
}

/** What a printer's files come to, beside the parts they print. */
export function createToolpaths(deps: ToolpathsDeps): Toolpaths {
  const { store, runner, history, meshes, intake, newId } = deps
  const found = (id: string) => store.getState().toolpaths.find((each) => each.id === id)

  async function partsHere(): Promise<readonly ToolpathPart[]> {
    const { parts } = store.getState().frame
    const sources = await Promise.all(
      parts.map(async (part) => {
        const source = await meshes.find(part.meshHash, part.fileName)
        return source === null
          ? null
          : { item: part.id, source: takenAs(source, part), unit: part.unit }
      }),
    )
    return sources.filter((each) => each !== null)
  }

  return {
    async readToolpath({ name, blob }) {
      const { id: frameId, printer } = store.getState().frame
      const { accelMmS2, wallAccelMmS2, travelAccelMmS2, cornerMmS } = printer
      const motion = { accelMmS2, wallAccelMmS2, travelAccelMmS2, cornerMmS }
      const settings = { ...motion, diameterMm: null, bead: printer.habits?.bead }
      const parts = await partsHere()
      const outcome = await intake.opening(name, (signal, tell) =>
        runner.run(
          { kind: 'toolpath', name, blob, parts, settings },
          { signal, onEvent: atEachPercent(tell) },
        ),
      )
      const fileName = plainName(name)
      if (!outcome.ok) {
        if (outcome.problem.code !== 'cancelled') {
          intake.fail([{ fileName, problem: outcome.problem }])
        }
        return
      }
      const read = { id: newId(), frameId, fileName, ...outcome.value }
      store.setState(({ toolpaths }) => ({
        toolpaths: [read, ...toolpaths],
        notice: { text: `Read “${fileName}”: it stands on the Bench sheet.`, canUndo: false },
      }))
    },
    takeRecipe(id) {
      const { frame } = store.getState()
      const toolpath = found(id)
      const match = toolpath?.match ?? null
      const part = frame.parts.find((each) => each.id === match?.item)
      if (toolpath === undefined || match === null || part === undefined) return
      const { rotateDeg } = match.pose
      const isTurned = rotateDeg.some((degrees, axis) => degrees !== part.pose.rotateDeg[axis])
      history.commit(
        `take the recipe of “${part.name}” off its printer file`,
        patchParts(frame, [part.id], {
          recipe: recipeOf(toolpath.figures),
          ...(isTurned ? { pose: match.pose } : {}),
        }),
      )
    },
    takeHabits(id) {
      const { frame } = store.getState()
      const toolpath = found(id)
      if (toolpath === undefined) return
      const printer = withHabits(frame.printer, toolpath.figures)
      history.commit('take habits and speeds off a printer file', { ...frame, printer })
    },
    dismissToolpath(id) {
      store.setState(({ toolpaths }) => ({
        toolpaths: toolpaths.filter((each) => each.id !== id),
      }))
    },
  }
}

/** Each telling draws the page, and a file comes in thousands of pieces. */
function atEachPercent(tell: (fraction: number) => void) {
  let told = -1
  return ({ fraction }: { readonly fraction: number }) => {
    const percent = Math.floor(100 * fraction)
    if (percent === told) return
    told = percent
    tell(fraction)
  }
}

/** What the moves show of a recipe, as far as it may be typed. */
function recipeOf(figures: ToolpathFigures): Partial<Recipe> {
  const { pattern, ...numbers } = toldRecipe(figures)
  return {
    ...(pattern === undefined ? {} : { pattern }),
    ...within<RecipeNumber>(RECIPE_LIMITS, numbers),
  }
}

/** Speeds as written are the printer's own where no layer had to be slowed. */
function withHabits(printer: Printer, { kinds, habits }: ToolpathFigures): Printer {
  const speeds = {
    wallMmS: kinds.inner.speedMmS ?? kinds.outer.speedMmS,
    skinMmS: kinds.skin.speedMmS,
    infillMmS: kinds.infill.speedMmS,
  }
  const more = {
    outerWallMmS: kinds.inner.speedMmS === null ? null : kinds.outer.speedMmS,
    gapMmS: kinds.gap.speedMmS,
  }
  return {
    ...printer,
    ...within<keyof typeof speeds>(PRINTER_LIMITS, speeds),
    ...within<keyof typeof more>(PRINTER_MORE_LIMITS, more),
    habits: { ...printer.habits, ...habits },
  }
}

/** Of the numbers those that are told and may be typed. */
function within<K extends string>(
  limits: Readonly<Record<K, Limits>>,
  numbers: Readonly<Partial<Record<K, number | null>>>,
): Partial<Record<K, number>> {
  const told: Partial<Record<K, number>> = {}
  for (const key of Object.keys(numbers) as K[]) {
    const value = numbers[key]
    if (typeof value === 'number' && isWithin(limits[key], value)) told[key] = value
  }
  return told
}
