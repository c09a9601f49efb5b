import type { Bead } from '../model/habits.ts'
import type { Finding } from '../model/mesh.ts'
import { PreweighError } from '../model/problem.ts'
import type { SeenLayer, ToolpathFigures } from '../model/toolpath.ts'
import { beadSeen } from './beadSeen.ts'
import { measureCores } from './cores.ts'
import { filamentSeen, soldDiameterMm, USUAL_MM } from './filament.ts'
import { girthSeen } from './girth.ts'
import { judgeLines } from './judgeLines.ts'
import { layerHeights } from './layerHeights.ts'
import type { LayerLines } from './layerLines.ts'
import { linesOf, widthsOf } from './layerLines.ts'
import type { LayerMoves } from './layerMoves.ts'
import { copyMoves, layerGatherer, planLength } from './layerMoves.ts'
import { lineMeasures } from './lineMeasures.ts'
import { moveReader } from './moveReader.ts'
import type { PaceMotion } from './pace.ts'
import { overlapSeen } from './overlapSeen.ts'
import { pace } from './pace.ts'
import { habitsSeen, recipeSeen } from './recipeSeen.ts'
import type { Plan } from './rooms.ts'
import { filledMm2, paintPlan, planAbout } from './rooms.ts'
import { patternSeen } from './seenPattern.ts'
import { skinBands } from './skinBands.ts'
import { skinCount } from './skinCount.ts'
import { smallRooms } from './smallRooms.ts'
import { strandSeen } from './strandSeen.ts'
import { toolpathFindings } from './toolpathFindings.ts'
import { MOST_WALLS } from './wallCount.ts'

/** How the printer moves, and the filament where it is known. */
export interface ToolpathSettings extends PaceMotion {
  /** null: read off the moves. mm */
  readonly diameterMm: number | null
  /** How its lines end, where that is known: what moves do not tell is read by it. */
  readonly bead?: Bead | undefined
}

/** Takes a toolpath in pieces of any size and then tells what it comes to. */
export interface ToolpathReader {
  readonly push: (bytes: Uint8Array) => void
  /** @throws PreweighError where the file lays nothing. */
  readonly end: () => ToolpathFigures
}

/** Layers that are held back until it is known how thick the filament is. */
const HELD = 8

const sectionOf = (diameterMm: number): number => (Math.PI * diameterMm ** 2) / 4

/**
 * Reads a toolpath from its moves alone: plastic, time, and how it was made. Comments are not
 * looked at. Layers are judged one after the other and forgotten, so that a file of any length
 * takes the room of its largest layers.
 */
export function toolpathReader(settings: ToolpathSettings): ToolpathReader {
  const filament = filamentSeen()
  const measures = lineMeasures()
  const patterns = patternSeen()
  const skins = skinCount()
  const bands = skinBands()
  const overlaps = overlapSeen()
  const strands = strandSeen()
  const beads = beadSeen()
  const rooms = smallRooms()
  const clock = pace(settings.cornerMmS)
  const heightAt = layerHeights()
  const first = lineMeasures()
  const girth = girthSeen()
  const bedGirth = girthSeen()
  const filled = new Float64Array(MOST_WALLS + 1)
  const thin = new Float64Array(MOST_WALLS + 1)
  const layers = new Map<number, { topMm: number; heightMm: number; filamentMm: number }>()
  const held: LayerLines[] = []
  let plan: Plan | null = null
  let reckonedMm2 = sectionOf(settings.diameterMm ?? USUAL_MM)
  let begun = false
  let lastTopMm = 0
  let envelopeMm3 = 0
  let [coreMm3, coreFilamentMm, coreLengthMm] = [0, 0, 0]
  const sums = { laidMm: 0, pathMm: 0, travelMm: 0, retracts: 0, rising: 0 }

  const judge = (layer: LayerLines): void => {
    if (layer.moves.topMm < lastTopMm) {
      skins.finish()
      bands.finish()
    }
    lastTopMm = layer.moves.topMm
    const widths = widthsOf(layer, reckonedMm2)
    const { kinds, walls } = judgeLines(layer, widths)
    const { moves, lines, heightMm } = layer
    plan ??= planAbout(moves.fromX[lines[0]!]!, moves.fromY[lines[0]!]!)
    paintPlan(plan, moves, kinds, widths)
    skins.add(plan)
    bands.add(plan)
    envelopeMm3 += filledMm2(plan) * heightMm
    const onBed = moves.topMm === heightMm
    measures.add(layer, kinds, widths, onBed)
    if (onBed) first.add(layer, kinds, widths, false)
    if (!onBed) {
      overlaps.add(layer, kinds, widths)
      strands.add(layer, kinds, widths)
      beads.add(layer, kinds, widths)
      rooms.add(plan, moves, kinds)
      walls.filled.forEach((mm, k) => (filled[k]! += mm))
      walls.thin.forEach((mm, k) => (thin[k]! += mm))
      const cores = measureCores(plan, moves, kinds)
      patterns.add(moves, cores.inside)
      coreMm3 += cores.areaMm2 * heightMm
      coreFilamentMm += cores.filamentMm
      coreLengthMm += cores.lengthMm
    }
    const outline = onBed ? bedGirth : girth
    outline.nextLayer()
    for (const i of lines) outline.add(moves.toX[i]!, moves.toY[i]!, widths[i]! / 2)
    timeLayer(moves, kinds)
  }

  const timeLayer = (moves: LayerMoves, kinds: readonly (string | null)[] = []): void => {
    for (let i = 0; i < moves.count; i++) {
      const [dx, dy] = [moves.toX[i]! - moves.fromX[i]!, moves.toY[i]! - moves.fromY[i]!]
      const dz = moves.toZ[i]! - moves.fromZ[i]!
      const pushed = moves.filamentMm[i]!
      if (dx === 0 && dy === 0 && dz === 0) {
        if (pushed !== 0 && moves.speedMmS[i]! > 0) {
          clock.pause(Math.abs(pushed) / moves.speedMmS[i]!)
        }
        continue
      }
      const wall = kinds[i] === 'outer' || kinds[i] === 'inner'
      const usual =
        pushed > 0 ? (wall ? settings.wallAccelMmS2 : settings.accelMmS2) : settings.travelAccelMmS2
      clock.move(dx, dy, dz, moves.speedMmS[i]!, moves.accelMmS2[i]! || usual)
    }
  }

  const addUp = (moves: LayerMoves): void => {
    for (let i = 0; i < moves.count; i++) {
      const length = planLength(moves, i)
      const laid = moves.laidMm[i]!
      sums.laidMm += laid
      if (laid > 0) sums.pathMm += length
      else sums.travelMm += length
      if (moves.filamentMm[i]! < 0 && !(moves.filamentMm[i - 1]! < 0)) sums.retracts++
      if (laid > 0 && length > 0 && moves.toZ[i] !== moves.fromZ[i]) sums.rising += laid
    }
  }

  const release = (): void => {
    if (settings.diameterMm === null) reckonedMm2 = filament.sectionMm2() ?? reckonedMm2
    held.splice(0).forEach(judge)
  }

  const gatherer = layerGatherer((moves) => {
    addUp(moves)
    const bare = linesOf(moves, 1)
    // Lines without a loop before the first layer are priming; so is what lies at no height.
    begun ||= bare.runs.some(({ closed }) => closed)
    if (!begun || !(moves.topMm > 0)) {
      timeLayer(moves)
      return
    }
    const heightMm = heightAt(moves.topMm)
    const layer = { ...bare, heightMm }
    const key = Math.round(200 * moves.topMm)
    const known = layers.get(key) ?? { topMm: moves.topMm, heightMm, filamentMm: 0 }
    known.filamentMm += layer.lines.reduce((sum, i) => sum + moves.laidMm[i]!, 0)
    layers.set(key, known)
    if (layers.size > 1) filament.add(layer)
    if (held.length > 0 || layers.size <= HELD) {
      held.push({ ...linesOf(copyMoves(moves), heightMm) })
      if (held.length === HELD) release()
      return
    }
    judge(layer)
  })
  const reader = moveReader(gatherer.add)

  return {
    push: reader.push,
    end() {
      const tally = reader.end()
      gatherer.end()
      release()
      skins.finish()
      bands.finish()
      const timeS = clock.end()
      if (layers.size === 0) throw nothingLaid(tally.moves)
      const seenMm2 = filament.sectionMm2()
      const soldMm = seenMm2 === null ? null : soldDiameterMm(seenMm2)
      const diameterMm = settings.diameterMm ?? soldMm ?? USUAL_MM
      const sectionMm2 = sectionOf(diameterMm)
      const kinds = measures.told(sectionMm2, reckonedMm2)
      const onBed = first.told(sectionMm2, reckonedMm2)
      const told: SeenLayer[] = [...layers.values()]
        .sort((a, b) => a.topMm - b.topMm)
        .map(({ topMm, heightMm, filamentMm }) => ({
          topMm,
          heightMm,
          depositMm3: filamentMm * sectionMm2,
        }))
      const evidence = {
        layers: told,
        kinds,
        firstWidthMm: onBed.skin.widthMm ?? onBed.outer.widthMm,
        filled,
        thin,
        bottom: skins.bottom,
        under: skins.under,
        top: skins.top,
        cellMm2: plan === null ? 0 : plan.pitchMm ** 2,
        coreMm3,
        coreDepositMm3: coreFilamentMm * sectionMm2,
        coreLengthMm,
        pattern: patterns.pattern(),
        overlapMm: overlaps.overlapMm(),
        strandShare: strands.share(),
        bead: beads.bead(),
        knownBead: settings.bead ?? null,
        leastRoomMm2: rooms.leastMm2(),
        bandMm: bands.widthMm,
      }
      const recipe = recipeSeen(evidence)
      const findings: readonly Finding[] = toolpathFindings({
        tally,
        recipe,
        risingShare: sums.rising / sums.laidMm,
        typedMm: settings.diameterMm,
        seenMm2,
        soldMm,
      })
      return {
        filamentM: sums.laidMm / 1000,
        diameterMm,
        depositMm3: sums.laidMm * sectionMm2,
        layersMm3: told.reduce((sum, { depositMm3 }) => sum + depositMm3, 0),
        timeS,
        pathM: sums.pathMm / 1000,
        travelM: sums.travelMm / 1000,
        retracts: sums.retracts,
        layers: told,
        envelopeMm3,
        girthMm: (told.length > 1 ? girth : bedGirth).girth(),
        kinds,
        recipe,
        habits: habitsSeen(evidence),
        findings,
      }
    },
  }
}

function nothingLaid(moves: number): PreweighError {
  return moves === 0
    ? new PreweighError(
        'unknown-format',
        'The file holds no moves of a print head (G0 to G3).',
        'Give the file that the printer is sent, as text.',
      )
    : new PreweighError(
        'no-volume',
        `The file holds ${moves} moves, but none of them lays plastic in layers.`,
        'Give the file of a print from molten filament, with its extruder moves (E).',
      )
}
