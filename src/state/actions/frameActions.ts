import type { StoreApi } from 'zustand/vanilla'
import { isWithin, READING_LIMITS } from '../../core/data/limits.ts'
import { MATERIALS } from '../../core/data/materials.ts'
import type { Frame } from '../../core/model/frame.ts'
import { pieceOf } from '../../core/frame/weighIn.ts'
import { dayOf } from '../../core/words/day.ts'
import { frameSum } from '../store/derived.ts'
import { materialOf } from '../store/materialOf.ts'
import {
  copyParts,
  dropMaterial,
  dropParts,
  patchParts,
  putMaterial,
  withMaterial,
  patchAircraft,
} from './edits.ts'
import { weighInOf, weighParts } from './weigh.ts'
import type { CommitOptions, History } from './history.ts'
import { partWords, patchLabel } from '../store/labels.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'

type FrameActions = Pick<
  Actions,
  | 'renameFrame'
  | 'updateParts'
  | 'duplicateParts'
  | 'removeParts'
  | 'putMaterial'
  | 'dropMaterial'
  | 'putPrinter'
  | 'putPrices'
  | 'putCarbon'
  | 'putAircraft'
  | 'takeWays'
  | 'putVariants'
  | 'weighPart'
  | 'putReadings'
  | 'select'
  | 'openPart'
  | 'dismissFailure'
  | 'dismissNotice'
  | 'dismissStory'
  | 'tell'
>

/** Actions that change the frame, or what of it is shown, at once. */
export function createFrameActions(
  store: StoreApi<AppState>,
  history: History,
  newId: () => string,
): FrameActions {
  const frame = () => store.getState().frame

  function commit(label: string, next: Frame, options?: CommitOptions): void {
    if (next !== frame()) history.commit(label, next, options)
  }

  return {
    renameFrame(name) {
      const trimmed = name.trim()
      if (trimmed === '' || trimmed === frame().name) return
      commit('rename the frame', { ...frame(), name: trimmed })
    },
    updateParts(ids, patch, gesture) {
      const { materials } = store.getState().workshop
      const ready = withMaterial(frame(), patch.materialId, materials)
      commit(patchLabel(frame(), ids, patch), patchParts(ready, ids, patch), {
        gesture: gestureOf('parts', gesture),
      })
    },
    duplicateParts(ids) {
      commit(`duplicate ${partWords(frame(), ids)}`, copyParts(frame(), ids, newId))
    },
    removeParts(ids) {
      const words = partWords(frame(), ids)
      const notice = { text: `Removed ${words}.`, canUndo: true }
      commit(`remove ${words}`, dropParts(frame(), ids), { also: { notice } })
    },
    putMaterial(material, gesture) {
      commit(`change material “${material.name}”`, putMaterial(frame(), material), {
        gesture: gestureOf(`material ${material.id}`, gesture),
      })
    },
    dropMaterial(id) {
      const name = materialOf(frame(), id).name
      const users = frame().parts.filter((part) => part.materialId === id)
      const isBuiltIn = MATERIALS.some((each) => each.id === id)
      if (users.length > 0 && !isBuiltIn) {
        const words = partWords(
          frame(),
          users.map((part) => part.id),
        )
        const text = `“${name}” stays: ${words} would be without a material. Give it another first.`
        store.setState({ notice: { text, canUndo: false } })
        return
      }
      commit(`remove the material “${name}”`, dropMaterial(frame(), id))
    },
    putPrinter(printer, gesture) {
      commit(
        'change the printer',
        { ...frame(), printer },
        { gesture: gestureOf('printer', gesture) },
      )
    },
    putPrices(prices, gesture) {
      commit('change prices', { ...frame(), prices }, { gesture: gestureOf('prices', gesture) })
    },
    putCarbon(carbon, gesture) {
      if (carbon === frame().carbon) return
      const label = carbon === null ? 'stop comparing' : 'change the carbon frame'
      commit(label, { ...frame(), carbon }, { gesture: gestureOf('carbon', gesture) })
    },
    weighPart(id, onScale) {
      const part = frame().parts.find((each) => each.id === id)
      if (part === undefined) return
      if (onScale !== null && !(onScale.scaleG > onScale.tareG)) {
        store.setState({ notice: { text: TARE_WORDS, canUndo: false } })
        return
      }
      if (onScale !== null && !isWithin(READING_LIMITS.scaleG, onScale.scaleG)) {
        const { min, max } = READING_LIMITS.scaleG
        const text = `Nothing was changed: a scale shows from ${min} to ${max} g.`
        store.setState({ notice: { text, canUndo: false } })
        return
      }
      const row = frameSum(store.getState()).rows.find((each) => each.part.id === id)
      const weighIn =
        onScale === null
          ? null
          : weighInOf(
              onScale,
              pieceOf(part, materialOf(frame(), part.materialId), frame().printer),
              row?.figures?.massG.mid ?? null,
              dayOf(new Date()),
            )
      commit(`weigh “${part.name}”`, weighParts(frame(), id, weighIn))
    },
    putReadings(patch, what) {
      if (patch.wholes?.some(({ scaleG, tareG }) => !(scaleG > tareG)) === true) {
        store.setState({ notice: { text: TARE_WORDS, canUndo: false } })
        return
      }
      commit(what, { ...frame(), ...patch })
    },
    takeWays(ways, what) {
      const next = Object.entries(ways).reduce(
        (all, [id, way]) => patchParts(all, [id], way),
        frame(),
      )
      commit(what, next)
    },
    putVariants(variants, what) {
      commit(what, { ...frame(), variants })
    },
    putAircraft(patch, what, gesture) {
      const aircraft = patchAircraft(frame().aircraft, patch)
      commit(what, { ...frame(), aircraft }, { gesture: gestureOf(what, gesture) })
    },
    select(ids) {
      const here = new Set(frame().parts.map((part) => part.id))
      store.setState({ selection: ids.filter((id) => here.has(id)) })
    },
    openPart(id) {
      store.setState({ openPartId: frame().parts.some((part) => part.id === id) ? id : null })
    },
    dismissFailure(id) {
      store.setState((state) => ({ failures: state.failures.filter((each) => each.id !== id) }))
    },
    tell(text) {
      store.setState({ notice: { text, canUndo: true } })
    },
    dismissNotice() {
      store.setState({ notice: null })
    },
    dismissStory() {
      store.setState({ story: null })
    },
  }
}

const TARE_WORDS =
  'Nothing was changed: the tare is as much as the scale shows, or more. Check both.'

/** Two fields may use the same word for their gesture; they must not share an undo step. */
function gestureOf(what: string, gesture: string | undefined): string | undefined {
  return gesture === undefined ? undefined : `${what}: ${gesture}`
}
