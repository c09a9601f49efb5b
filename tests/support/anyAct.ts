import fc from 'fast-check'
import { AIRCRAFT_DEFAULTS } from '../../src/core/data/aircraft.ts'
import { TEXT_LIMITS, VARIANTS_MOST } from '../../src/core/data/limits.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRINTERS } from '../../src/core/data/printers.ts'
import { pricesIn } from '../../src/core/data/prices.ts'
import { ROLES } from '../../src/core/data/roles.ts'
import type { PartWay } from '../../src/core/model/frame.ts'
import { RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import type { DemoSource } from '../../src/state/actions/demos.ts'
import type { MineKind } from '../../src/state/store/workshop.ts'
import type { Actions, Session } from '../../src/state/actions/types.ts'
import type { AppState } from '../../src/state/store/types.ts'
import { jointEnd } from './fullFrame.ts'
import { LIMIT_PLACES, TEXT_PLACES, type Path } from './limitPlaces.ts'
import { box, merge, translate } from './meshes.ts'
import { putInFrame, valueAt } from './putInFrame.ts'
import { boxFile, fileOf } from './session.ts'
import { writeStlBinary } from './writeMesh.ts'

/*
 * Everything that can be done to the state, with numbers and texts of every kind: for tests of what
 * holds whatever is done.
 */

export interface Doing {
  readonly actions: Session
  readonly state: () => AppState
}
type Act = (doing: Doing) => unknown

/**
 * Any number a hand or another program could bring: inside, at the ends, far outside, and none at
 * all.
 */
const anyNumber = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(0, 1, 2, 3, 0.2, 0.5, 10, 45, 100) },
  fc.double(),
  fc.integer(),
  fc.constantFrom(-1, 1e-9, 999, 1000, 9999, 10_000, 100_000, 100_001, 1e9),
  fc.constantFrom(Number.MAX_VALUE, Number.NaN, Infinity, -0),
)
const anyText = fc.oneof(
  fc.string(),
  fc.string({ unit: 'grapheme' }),
  fc
    .constantFrom(...Object.values(TEXT_LIMITS).flatMap((most) => [most, most + 1]))
    .map((letters) => 'x'.repeat(letters)),
)
const numbers = fc.tuple(anyNumber, anyNumber, anyNumber)
const which = fc.nat(7)

const part = ({ state }: Doing, at: number) => {
  const { parts } = state().frame
  return parts[at % Math.max(1, parts.length)]
}
const partId = (doing: Doing, at: number) => part(doing, at)?.id ?? 'gone'
const ids = (doing: Doing, at: number) =>
  doing.state().frame.parts.flatMap(({ id }, i) => (i % 3 === at % 3 ? [id] : []))
const zoneHash = (doing: Doing, at: number) => part(doing, at)?.zones[0]?.meshHash ?? 'gone'
const projectId = ({ state }: Doing, at: number) => {
  const { projects } = state()
  return projects[at % Math.max(1, projects.length)]?.id ?? 'gone'
}
const roleId = ({ state }: Doing, at: number) => {
  const { roles = [] } = state().frame
  return roles[at % Math.max(1, roles.length)]?.id ?? 'gone'
}

/** One joint more, or one less. */
function anyJoint(): fc.Arbitrary<Act> {
  return fc.tuple(fc.oneof(fc.constant(0), anyNumber), which).map(([value, place]): Act => {
    const key = (['turnDeg', 'slideMm', 'gapMm'] as const)[place % 3] ?? 'turnDeg'
    return (doing) => {
      const { joints } = doing.state().frame.aircraft
      if (place % 4 === 3) {
        doing.actions.putAircraft({ joints: joints.slice(1) }, 'part a joint')
        return
      }
      const joint = {
        id: `joint ${joints.length}`,
        a: jointEnd(partId(doing, place), 0, [0, 0, 1]),
        b: jointEnd(partId(doing, place + 1), place % 2, [0, 0, -1]),
        kind: 'bores' as const,
        mirrored: place % 3 === 0,
        turnDeg: 0,
        slideMm: 0,
        gapMm: 0,
        [key]: value,
        fastener: { thread: 'M3' as const, end: 'nut' as const },
      }
      doing.actions.putAircraft({ joints: [...joints, joint] }, 'join two pieces')
    }
  })
}

/** Puts any value at any place of the frame that has one. */
function putting<T>(paths: readonly Path[], values: fc.Arbitrary<T>): fc.Arbitrary<Act> {
  return fc.tuple(fc.constantFrom(...paths), values).map(([path, value]): Act => {
    return ({ actions, state }) => {
      const { frame } = state()
      const isThere = path.every((_, i) => {
        const within = i === 0 ? frame : valueAt(frame, path.slice(0, i) as unknown as Path)
        return typeof within === 'object' && within !== null
      })
      if (isThere) putInFrame(actions, frame, path, value)
    }
  })
}
const PATHS = Object.values(LIMIT_PLACES).flatMap(({ kept }) => kept)
const TEXTS = Object.values(TEXT_PLACES).flat()
const into = (roots: readonly string[]): fc.Arbitrary<Act> => {
  const texts = TEXTS.filter(([root]) => roots.includes(root))
  const put = putting(
    PATHS.filter(([root]) => roots.includes(root)),
    anyNumber,
  )
  return texts.length === 0 ? put : fc.oneof(put, putting(texts, anyText))
}

const did = (act: Act): fc.Arbitrary<Act> => fc.constant(act)
const at = (act: (doing: Doing, at: number) => unknown): fc.Arbitrary<Act> =>
  which.map((place) => (doing) => act(doing, place))
const named = (act: (doing: Doing, name: string, at: number) => unknown): fc.Arbitrary<Act> =>
  fc.tuple(anyText, which).map(
    ([name, place]) =>
      (doing) =>
        act(doing, name, place),
  )
/** What is documented to reject where part or mesh are gone. */
const quietly = (promise: Promise<unknown>) => promise.catch(() => undefined)

const wayOf = ({ recipe, materialId }: PartWay): PartWay => ({ recipe, materialId })

const MINE: Readonly<Record<MineKind, true>> = {
  printer: true,
  prices: true,
  materials: true,
  roles: true,
  printers: true,
}
const mineKind = fc.constantFrom(...(Object.keys(MINE) as MineKind[]))
const plate = () =>
  fileOf('pair.stl', writeStlBinary(merge([box(9, 5, 4), translate(box(6, 5, 4), [20, 0, 0])])))

/**
 * Each action the page has, done in any way; one that is added to `Actions` is missed here by the
 * compiler.
 */
export const ACTS: Readonly<Record<keyof Actions, fc.Arbitrary<Act>>> = {
  addFiles: fc.tuple(anyText, fc.integer({ min: 1, max: 9 })).map(
    ([name, size]) =>
      ({ actions }) =>
        actions.addFiles([boxFile(`${name}.stl`, size, 4, 3)]),
  ),
  loadPieces: named(({ actions }, name) =>
    actions.loadPieces(name, [
      { file: boxFile('piece.stl', 8, 8, 3), name, note: name, recipe: RECIPE_DEFAULTS },
    ]),
  ),
  loadDemo: did(({ actions }) => actions.loadDemo('tern')),
  openProject: did(async ({ actions }) =>
    actions.openProject({ name: 'saved.preweigh', blob: await actions.saveProject() }),
  ),
  cancelOpening: did(({ actions, state }) => {
    actions.cancelOpening(state().incoming.map(({ id }) => id))
  }),
  saveProject: did(({ actions }) => actions.saveProject()),
  newFrame: did(({ actions }) => {
    actions.newFrame()
  }),
  renameFrame: named(({ actions }, name) => {
    actions.renameFrame(name)
  }),
  updateParts: fc.oneof(
    into(['parts']),
    fc.tuple(numbers, which).map(([[quantity, spares, mirrored], place]): Act => (doing) => {
      doing.actions.updateParts(ids(doing, place), { quantity, spares, mirrored }, 'drag')
    }),
    fc.tuple(numbers, which).map(([rotateDeg, place]): Act => (doing) => {
      doing.actions.updateParts(ids(doing, place), { pose: { rotateDeg }, unit: 'inch' })
    }),
    at((doing, place) => {
      doing.actions.updateParts(ids(doing, place), { materialId: 'own', keepsHairs: true })
    }),
  ),
  applyRole: at((doing, place) => {
    const own = roleId(doing, place)
    doing.actions.applyRole(ids(doing, place), place % 2 === 0 ? own : Object.keys(ROLES)[0]!)
  }),
  duplicateParts: at((doing, place) => {
    doing.actions.duplicateParts(ids(doing, place))
  }),
  removeParts: at((doing, place) => {
    doing.actions.removeParts([partId(doing, place)])
  }),
  putMaterial: fc.oneof(
    into(['materials']),
    named(({ actions }, name, place) => {
      actions.putMaterial({ ...MATERIALS[place % MATERIALS.length]!, id: `own ${place}`, name })
    }),
  ),
  dropMaterial: at(({ actions, state }, place) => {
    const { materials } = state().frame
    actions.dropMaterial(materials[place % Math.max(1, materials.length)]?.id ?? 'gone')
  }),
  putPrinter: fc.oneof(
    into(['printer']),
    at(({ actions }, place) => {
      actions.putPrinter(PRINTERS[place % PRINTERS.length]!)
    }),
  ),
  putPrices: fc.oneof(
    into(['prices']),
    did(({ actions }) => {
      actions.putPrices(pricesIn('CHF'), 'drag')
    }),
  ),
  putCarbon: fc.oneof(
    numbers.map(([massG, price]): Act => ({ actions }) => {
      actions.putCarbon({ massG, price })
    }),
    did(({ actions }) => {
      actions.putCarbon(null)
    }),
  ),
  weighPart: fc.tuple(numbers, which).map(([[scaleG, pieces, tareG], place]): Act => (doing) => {
    const onScale = { scaleG, pieces, tareG, stepG: 0.1, trusted: place % 2 === 0 }
    doing.actions.weighPart(partId(doing, place), place === 7 ? null : onScale)
  }),
  forgetLessons: at(({ actions, state }, place) => {
    const { materials, printer } = state().frame
    actions.forgetLessons(place % 2 === 0 ? null : (materials[0]?.id ?? 'pla'), printer.id)
  }),
  dropLessons: did(({ actions, state }) => {
    actions.dropLessons(state().workshop.lessons.map(({ id }) => id))
  }),
  keepAsMine: mineKind.map((kind) => ({ actions }) => {
    actions.keepAsMine(kind)
  }),
  takeMine: mineKind.map((kind) => ({ actions }) => {
    actions.takeMine(kind)
  }),
  putSpools: did(({ actions }) => {
    actions.putSpools([{ id: 's', materialId: 'pla', grossG: 500, emptyG: 200 }])
  }),
  putUnits: fc
    .record({ length: fc.constantFrom('mm', 'in'), mass: fc.constantFrom('g', 'oz') } as const)
    .map((units) => ({ actions }) => {
      actions.putUnits(units)
    }),
  keepRole: named((doing, name, place) => {
    doing.actions.keepRole(partId(doing, place), name)
  }),
  renameRole: named((doing, name, place) => {
    doing.actions.renameRole(roleId(doing, place), name)
  }),
  dropRole: at((doing, place) => {
    doing.actions.dropRole(roleId(doing, place))
  }),
  putReadings: into(['wholes', 'clocks']),
  putRuns: into(['runs']),
  putPrinters: at(({ actions }, place) => {
    actions.putPrinters(PRINTERS.slice(0, place % 3), 'print on others too')
  }),
  swapPrinter: at(({ actions, state }, place) => {
    const { printers = [] } = state().frame
    actions.swapPrinter(printers[place % Math.max(1, printers.length)]?.id ?? 'gone')
  }),
  putVariants: fc.oneof(
    into(['variants']),
    named(({ actions, state }, name) => {
      const { parts, variants = [] } = state().frame
      const ways = Object.fromEntries(parts.map(({ id, ...way }) => [id, wayOf(way)]))
      const all = [...variants, { id: `v${variants.length}`, name, ways }]
      actions.putVariants(all.slice(0, VARIANTS_MOST), 'keep')
    }),
  ),
  takeWays: fc.tuple(anyNumber, which).map(([walls, place]): Act => (doing) => {
    const parts = doing.state().frame.parts.slice(0, place)
    const ways = parts.map(({ id, recipe, materialId }) => [
      id,
      { recipe: { ...recipe, walls }, materialId: place === 3 ? 'gone' : materialId },
    ])
    doing.actions.takeWays(Object.fromEntries(ways), 'take')
  }),
  putAircraft: fc.oneof(
    { weight: 4, arbitrary: into(['aircraft']) },
    did(({ actions }) => {
      actions.putAircraft({ ...AIRCRAFT_DEFAULTS }, 'begin anew', 'drag')
    }),
    anyJoint(),
  ),
  select: at((doing, place) => {
    doing.actions.select(ids(doing, place))
  }),
  openPart: at((doing, place) => {
    doing.actions.openPart(place === 0 ? null : partId(doing, place))
  }),
  dismissFailure: did(({ actions, state }) => {
    for (const { id } of state().failures) actions.dismissFailure(id)
  }),
  dismissNotice: did(({ actions }) => {
    actions.dismissNotice()
  }),
  dismissStory: did(({ actions }) => {
    actions.dismissStory()
  }),
  // None is read here: `tests/state/actions/toolpaths.test.ts` gives them something to take.
  takeRecipe: did(({ actions }) => {
    actions.takeRecipe('none')
  }),
  takeHabits: did(({ actions }) => {
    actions.takeHabits('none')
  }),
  dismissToolpath: did(({ actions }) => {
    actions.dismissToolpath('none')
  }),
  retryPart: at((doing, place) => {
    doing.actions.retryPart(partId(doing, place))
  }),
  countFully: at((doing, place) => {
    doing.actions.countFully(partId(doing, place))
  }),
  undo: did(({ actions }) => {
    actions.undo()
  }),
  redo: did(({ actions }) => {
    actions.redo()
  }),
  listProjects: did(({ actions }) => actions.listProjects()),
  openStored: at((doing, place) => doing.actions.openStored(projectId(doing, place))),
  renameProject: named((doing, name, place) =>
    doing.actions.renameProject(projectId(doing, place), name),
  ),
  duplicateProject: at((doing, place) => doing.actions.duplicateProject(projectId(doing, place))),
  deleteProject: at((doing, place) => doing.actions.deleteProject(projectId(doing, place))),
  bringBackProject: at((doing, place) => doing.actions.bringBackProject(projectId(doing, place))),
  takeOver: did(({ actions }) => actions.takeOver()),
  openCopy: did(({ actions }) => {
    actions.openCopy()
  }),
  tell: named(({ actions }, text) => {
    actions.tell(text)
  }),
  splitPlate: at(async (doing, place) => {
    await doing.actions.addFiles([plate()])
    await doing.actions.splitPlate(doing.state().frame.parts.at(-1 - (place % 2))?.id ?? 'gone')
  }),
  dropSpecks: at((doing, place) => doing.actions.dropSpecks(partId(doing, place))),
  addZones: at((doing, place) =>
    doing.actions.addZones(partId(doing, place), [boxFile(`zone ${place}.stl`, 2 + place, 3, 2)]),
  ),
  dropZone: at((doing, place) => {
    doing.actions.dropZone(partId(doing, place), zoneHash(doing, place))
  }),
  lowerZone: at((doing, place) => {
    doing.actions.lowerZone(partId(doing, place), zoneHash(doing, place))
  }),
  setZonePct: fc.tuple(anyNumber, which).map(([pct, place]): Act => (doing) => {
    doing.actions.setZonePct(partId(doing, place), zoneHash(doing, place), pct)
  }),
  listPoses: at((doing, place) => quietly(doing.actions.listPoses(partId(doing, place)))),
  tryRecipe: at((doing, place) =>
    quietly(
      doing.actions.tryRecipe(partId(doing, place), { walls: place }, new AbortController().signal),
    ),
  ),
  loadShape: at((doing, place) => quietly(doing.actions.loadShape(partId(doing, place)))),
  drawFrame: did(({ actions }) =>
    actions.drawFrame({
      view: { azimuthDeg: 30, elevationDeg: 30 },
      sheet: { widthPx: 200, heightPx: 100, marginPx: 10 },
      apart: 0,
      samples: 1,
    }),
  ),
  // Changes nothing, and takes long: `tests/state/actions/jointOffers.test.ts` has it.
  listJointOffers: did(() => undefined),
  listWays: did(() => undefined),
  listRepeats: did(() => undefined),
  findClashes: did(() => undefined),
  listSigns: did(({ actions }) => actions.listSigns(new AbortController().signal)),
  listHoles: did(({ actions }) => actions.listHoles(new AbortController().signal)),
  lookAtPart: at((doing, place) =>
    doing.actions.lookAtPart(partId(doing, place), {
      view: { azimuthDeg: 30, elevationDeg: 30 },
      sheet: { widthPx: 200, heightPx: 100, marginPx: 10 },
      pointsMm: [[0, 0, 0]],
    }),
  ),
  cutPart: at((doing, place) => doing.actions.cutPart(partId(doing, place), 'x', 0.5)),
  sectionPart: at((doing, place) =>
    doing.actions.sectionPart(
      partId(doing, place),
      { jointBores: [], pick: { hold: 'auto', push: 'auto', direction: 'auto' } },
      AbortSignal.timeout(60_000),
    ),
  ),
  stiffenPart: at((doing, place) =>
    doing.actions.stiffenPart(
      partId(doing, place),
      {
        massG: 10,
        jointBores: [],
        pick: { hold: 'auto', push: 'auto', direction: 'auto' },
        loadN: 10,
        tipG: 0,
        cellMm: 4,
        wantTones: false,
      },
      { signal: AbortSignal.timeout(60_000) },
    ),
  ),
  loadMesh: at((doing, place) => quietly(doing.actions.loadMesh(partId(doing, place)))),
}

export type ActKind = keyof typeof ACTS

/** Any action in any way, with its kind. */
export const anyAct: fc.Arbitrary<readonly [ActKind, Act]> = fc
  .constantFrom(...(Object.keys(ACTS) as ActKind[]))
  .chain((kind) => ACTS[kind].map((act) => [kind, act] as const))

/** A small sample in place of the page's own. */
export const anyDemo: DemoSource = {
  load: () =>
    Promise.resolve({
      ok: true,
      value: {
        name: 'Test plane',
        story: 'Invented.',
        parts: [
          {
            file: boxFile('rib.stl', 12, 2, 6),
            name: 'rib',
            quantity: 6,
            spares: 1,
            mirrored: 0,
            unit: 'millimetre',
            materialId: 'pla',
            role: null,
            recipe: {},
          },
        ],
        materials: [],
        printer: PRINTERS[0]!,
        carbon: null,
        aircraft: {
          items: [],
          limitG: 300,
          printedLimitG: null,
          places: [],
          flight: null,
          wing: null,
          season: AIRCRAFT_DEFAULTS.season,
          weighedG: { rib: 0.4 },
        },
      },
    }),
}
