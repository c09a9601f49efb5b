import { describe, expect, test } from 'vitest'
import { PRINTER_DEFAULT, PRINTERS } from '../../../src/core/data/printers.ts'
import { PRINTERS_MOST } from '../../../src/core/data/limits.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { pricesIn } from '../../../src/core/data/prices.ts'
import type { Material } from '../../../src/core/model/figures.ts'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import type { Session } from '../../../src/state/actions/types.ts'
import { boxFile, startSession } from '../../support/session.ts'

const FAST = { ...PRINTER_DEFAULT, id: 'own', name: 'Own printer', wallMmS: 123 }
const [FIRST] = MATERIALS
const BLACK: Material = { ...(FIRST as Material), id: 'own-black', name: 'Black spool' }

/** A frame as a file that came from somewhere else. */
async function fileFromElsewhere(change: (actions: Session) => void): Promise<Blob> {
  const { actions } = await startSession()
  change(actions)
  const file = await actions.saveProject()
  actions.close()
  return file
}

describe('what is the builder’s', () => {
  test('is what was changed in a frame, and the next frame starts with it', async () => {
    const { actions, state } = await startSession()
    actions.putPrinter(FAST)
    actions.putPrices({ ...pricesIn('GBP'), electricityPerKwh: 0.4 })
    actions.putMaterial(BLACK)
    await actions.addFiles([boxFile('arm.stl', 20, 8, 6)])
    const [part] = state().frame.parts
    actions.updateParts([part?.id ?? ''], { recipe: { walls: 5 } })
    actions.keepRole(part?.id ?? '', 'Race arm')
    actions.newFrame()
    const { printer, prices, materials, roles } = state().frame
    expect(printer).toEqual(FAST)
    expect(prices.electricityPerKwh).toBe(0.4)
    expect(materials).toEqual([BLACK])
    expect(roles).toMatchObject([{ name: 'Race arm', recipe: { walls: 5 } }])
    actions.close()
  })

  test('holds other printers too; made the frame’s own, each keeps the runs placed on it', async () => {
    const { actions, state } = await startSession()
    const [own, other] = [state().frame.printer, { ...FAST, id: 'other' }]
    actions.putPrinters([other], 'print on another')
    const spot = { partId: 'a', xMm: 1, yMm: 2, turnDeg: 0 }
    actions.putRuns({ byHand: [[spot], [{ ...spot, printerId: 'other' }]] }, 'place')
    const clock = { id: 'c', pieces: { a: 1 }, timeS: 60, calculatedS: 50, date: null }
    const clocks = [
      { ...clock, trusted: true },
      { ...clock, id: 'd', trusted: true, printerId: 'other' },
    ]
    actions.putReadings({ clocks }, 'time two prints')
    actions.swapPrinter('other')
    const of = state().frame.clocks?.map(({ printerId }) => printerId ?? 'own')
    expect(of).toEqual([own.id, 'own'])
    expect(state().frame).toMatchObject({ printer: other, printers: [own] })
    expect(state().frame.runs?.byHand).toEqual([[{ ...spot, printerId: own.id }], [spot]])
    actions.undo()
    expect(state().frame).toMatchObject({ printer: own, printers: [other] })
    actions.newFrame()
    expect(state().frame.printers).toEqual([other])
    actions.putPrinters([], 'print on one')
    expect(state().frame).not.toHaveProperty('printers')
    actions.newFrame()
    expect(state().frame).not.toHaveProperty('printers')
    actions.close()
  })

  test('holds no more other printers than a file gives back', async () => {
    const { actions, state } = await startSession()
    const many = Array.from({ length: PRINTERS_MOST + 1 }, (_, i) => ({ ...FAST, id: `p${i}` }))
    actions.putPrinters(many, 'print on many')
    expect(state().frame).not.toHaveProperty('printers')
    actions.putPrinters(many.slice(1), 'print on some')
    expect(state().frame.printers).toHaveLength(PRINTERS_MOST)
    actions.close()
  })

  test('is there at the next visit and in another tab', async () => {
    const storage = createMemoryStorage()
    const first = await startSession({ storage })
    first.actions.putPrinter(FAST)
    await first.actions.flush()
    const second = await startSession({ storage })
    second.actions.newFrame()
    expect(second.state().frame.printer).toEqual(FAST)
    // Neither tab writes over what the other changed meanwhile.
    second.actions.putMaterial(BLACK)
    await second.actions.flush()
    first.actions.putPrices(pricesIn('CHF'))
    await first.actions.flush()
    expect(first.state().workshop).toMatchObject({ printer: FAST, materials: [BLACK] })
    expect(first.state().workshop.prices).toEqual(pricesIn('CHF'))
    first.actions.close()
    second.actions.close()
  })

  test('hears at once what another tab changed', async () => {
    const storage = createMemoryStorage()
    const listeners: (() => void)[] = []
    const news = () => ({
      post: () => {
        for (const each of listeners) each()
      },
      onNews: (listener: () => void) => void listeners.push(listener),
      close: () => undefined,
    })
    const first = await startSession({ storage, workshopNews: news() })
    const second = await startSession({ storage, workshopNews: news() })
    first.actions.putPrinter(FAST)
    await first.actions.settled()
    await second.actions.settled()
    expect(second.state().workshop.printer).toEqual(FAST)
    first.actions.close()
    second.actions.close()
  })

  test('follows undo and redo', async () => {
    const { actions, state } = await startSession()
    actions.putPrinter(FAST)
    actions.undo()
    expect(state().workshop.printer).toEqual(PRINTER_DEFAULT)
    actions.redo()
    expect(state().workshop.printer).toEqual(FAST)
    actions.putMaterial(BLACK)
    actions.undo()
    expect(state().workshop.materials).toEqual([])
    actions.close()
  })

  test('is left alone by a frame from a file, until it is kept as mine', async () => {
    const theirs = await fileFromElsewhere((actions) => {
      actions.putPrinter({ ...FAST, wallMmS: 300 })
      actions.putMaterial({ ...BLACK, name: 'Theirs' })
    })
    const { actions, state } = await startSession()
    actions.putPrinter(FAST)
    actions.putMaterial(BLACK)
    await actions.openProject({ name: 'theirs.preweigh', blob: theirs })
    expect(state().frame.printer.wallMmS).toBe(300)
    expect(state().frame.materials).toMatchObject([{ name: 'Theirs' }])
    const { workshop } = state()
    actions.putPrinter({ ...FAST, wallMmS: 310 })
    actions.putMaterial({ ...BLACK, name: 'Theirs, dried' })
    expect(state().workshop).toBe(workshop)
    actions.keepAsMine('printer')
    actions.keepAsMine('materials')
    expect(state().workshop.printer?.wallMmS).toBe(310)
    expect(state().workshop.materials).toMatchObject([{ name: 'Theirs, dried' }])
    // From here on it is the builder's.
    actions.putPrinter({ ...FAST, wallMmS: 320 })
    expect(state().workshop.printer?.wallMmS).toBe(320)
    actions.close()
  })

  test('can be taken by such a frame, and given back, without being changed', async () => {
    const theirs = await fileFromElsewhere((actions) => {
      actions.putPrinter({ ...FAST, wallMmS: 300 })
      actions.putMaterial({ ...BLACK, id: 'own-white', name: 'White spool' })
    })
    const { actions, state } = await startSession()
    actions.putPrinter(FAST)
    actions.putMaterial(BLACK)
    await actions.openProject({ name: 'theirs.preweigh', blob: theirs })
    actions.takeMine('printer')
    actions.takeMine('materials')
    expect(state().frame.printer).toEqual(FAST)
    expect(state().frame.materials.map(({ name }) => name)).toEqual(['White spool', 'Black spool'])
    actions.undo()
    actions.undo()
    expect(state().frame.printer.wallMmS).toBe(300)
    expect(state().workshop.printer).toEqual(FAST)
    expect(state().workshop.materials).toEqual([BLACK])
    actions.redo()
    expect(state().frame.printer).toEqual(FAST)
    actions.close()
  })

  test('comes into an older frame with the part that is given it', async () => {
    const { actions, state } = await startSession()
    await actions.addFiles([boxFile('arm.stl', 20, 8, 6)])
    await actions.settled()
    const old = state().frame
    actions.newFrame()
    actions.putMaterial(BLACK)
    await actions.listProjects()
    await actions.openStored(old.id)
    expect(state().frame.materials).toEqual([])
    actions.updateParts([old.parts[0]?.id ?? ''], { materialId: BLACK.id })
    expect(state().frame.materials).toEqual([BLACK])
    actions.undo()
    expect(state().frame.materials).toEqual([])
    expect(state().workshop.materials).toEqual([BLACK])
    actions.close()
  })

  test('works for the visit where the browser keeps nothing', async () => {
    const denied = () => Promise.reject(new DOMException('no', 'SecurityError'))
    const storage = {
      ...createMemoryStorage(),
      loadProject: denied,
      saveFrame: denied,
      loadWorkshop: denied,
      changeWorkshop: denied,
    }
    const { actions, state } = await startSession({ storage })
    actions.putPrinter(FAST)
    await actions.settled()
    actions.newFrame()
    expect(state().frame.printer).toEqual(FAST)
    expect(state().storage.kind).toBe('memory')
    actions.close()
  })

  test('that could not be written is written with the next change', async () => {
    let isFull = true
    const memory = createMemoryStorage()
    const storage: typeof memory = {
      ...memory,
      changeWorkshop: (change) =>
        isFull ? Promise.reject(new Error('full')) : memory.changeWorkshop(change),
    }
    const { actions } = await startSession({ storage })
    actions.putPrinter(FAST)
    await actions.flush()
    expect(await memory.loadWorkshop()).toBeNull()
    isFull = false
    actions.putMaterial(BLACK)
    await actions.flush()
    expect(await memory.loadWorkshop()).toMatchObject({ printer: FAST, materials: [BLACK] })
    actions.close()
  })

  test('keeps the units that are read in, and takes none it does not know', async () => {
    const storage = createMemoryStorage()
    const first = await startSession({ storage })
    expect(first.state().workshop.units).toBeUndefined()
    first.actions.putUnits({ length: 'in', mass: 'oz' })
    await first.actions.flush()
    first.actions.close()
    const next = await startSession({ storage })
    expect(next.state().workshop.units).toEqual({ length: 'in', mass: 'oz' })
    next.actions.close()
    await storage.changeWorkshop(
      (kept) => ({ ...(kept as object), units: { length: 'ell', mass: 'g' } }) as never,
    )
    const last = await startSession({ storage })
    expect(last.state().workshop.units).toBeUndefined()
    expect(
      last
        .state()
        .failures.map(({ problem }) => problem.message)
        .join(),
    ).toContain('Your choice of units is damaged')
    last.actions.close()
  })

  test('damaged in storage, is opened as far as it is sound, and said', async () => {
    const storage = createMemoryStorage()
    const [slow] = PRINTERS
    const damaged = {
      version: 1,
      printer: { ...slow, wallMmS: 1e9 },
      prices: { currency: 7 },
      materials: [BLACK, { id: 3 }],
      roles: [],
      lessons: ['nonsense'],
    }
    await storage.changeWorkshop(() => damaged as never)
    const { actions, state } = await startSession({ storage })
    expect(state().workshop).toMatchObject({
      printer: { wallMmS: 1000 },
      prices: null,
      materials: [BLACK],
      lessons: [],
    })
    const said = state().failures.map(({ problem }) => problem.message)
    expect(said).toHaveLength(3)
    expect(said[0]).toBe('Your printer was out of range: wallMmS was 1000000000, 1000 was taken.')
    actions.close()
  })
})

describe('a role of one’s own', () => {
  async function withRole() {
    const session = await startSession()
    await session.actions.addFiles([boxFile('arm.stl', 20, 8, 6), boxFile('leg.stl', 30, 8, 6)])
    const [arm, leg] = session.state().frame.parts
    if (arm === undefined || leg === undefined) throw new Error('two parts expected')
    session.actions.applyRole([arm.id], 'arm')
    session.actions.keepRole(arm.id, ' Race arm ')
    const [role] = session.state().frame.roles ?? []
    if (role === undefined) throw new Error('a role expected')
    return { ...session, arm, leg, role }
  }

  test('stays with its part, with the duty it was made of, through a file', async () => {
    const { actions, state, role, leg } = await withRole()
    expect(role).toMatchObject({ name: 'Race arm', duty: 'arm', recipe: { infillPct: 75 } })
    actions.applyRole([leg.id], role.id)
    expect(state().frame.parts[1]).toMatchObject({ role: 'arm', ownRole: role.id })
    const blob = await actions.saveProject()
    const elsewhere = await startSession()
    await elsewhere.actions.openProject({ name: 'f.preweigh', blob })
    expect(elsewhere.state().failures).toEqual([])
    expect(elsewhere.state().frame.parts[1]).toEqual(state().frame.parts[1])
    expect(elsewhere.state().frame.roles).toEqual([role])
    expect(elsewhere.state().workshop.roles).toEqual([])
    actions.close()
    elsewhere.actions.close()
  })

  test('is gone from a part whose recipe is changed by hand or by another role', async () => {
    const { actions, state, arm } = await withRole()
    actions.updateParts([arm.id], { recipe: { walls: 7 } })
    expect(state().frame.parts[0]).not.toHaveProperty('ownRole')
    actions.undo()
    actions.applyRole([arm.id], 'plate')
    expect(state().frame.parts[0]).not.toHaveProperty('ownRole')
    actions.close()
  })

  test('stays in the workshop too while another tab has the frame', async () => {
    const { actions, state, store, role } = await withRole()
    actions.renameRole(role.id, 'Long arm')
    const { frame, workshop } = state()
    store.setState({ elsewhere: { projectId: frame.id, why: 'open' } })
    actions.dropRole(role.id)
    expect(state().frame).toBe(frame)
    expect(state().workshop).toBe(workshop)
    expect(state().notice?.text).toContain('Nothing was changed')
    actions.close()
  })

  test('is renamed and deleted in frame and workshop; its parts keep the recipe', async () => {
    const { actions, state, arm, role } = await withRole()
    const { recipe } = state().frame.parts[0] ?? arm
    actions.renameRole(role.id, 'Long arm')
    expect(state().frame.roles).toMatchObject([{ name: 'Long arm' }])
    expect(state().workshop.roles).toMatchObject([{ name: 'Long arm' }])
    actions.dropRole(role.id)
    expect(state().frame.roles).toEqual([])
    expect(state().workshop.roles).toEqual([])
    expect(state().frame.parts[0]?.recipe).toBe(recipe)
    expect(state().frame.parts[0]).not.toHaveProperty('ownRole')
    actions.undo()
    expect(state().workshop.roles).toMatchObject([{ name: 'Long arm' }])
    actions.close()
  })

  test('of a name that is taken or too long is refused with a reason', async () => {
    const { actions, state, leg } = await withRole()
    const { frame } = state()
    for (const [name, said] of [
      ['race ARM', 'There is a role called “race ARM” already'],
      ['Mount', 'There is a role called “Mount” already'],
      ['x'.repeat(201), 'name was too long'],
    ] as const) {
      actions.keepRole(leg.id, name)
      expect(state().frame).toBe(frame)
      expect(state().notice?.text).toContain(said)
    }
    actions.close()
  })
})

describe('lessons', () => {
  test('are dropped one by one', async () => {
    const lesson = {
      of: 'mass' as const,
      materialIds: ['pla'],
      printerId: 'own',
      shared: [],
      ratio: 1,
      noise: 0.1,
    }
    const storage = createMemoryStorage()
    const { actions, state } = await startSession({ storage })
    await storage.changeWorkshop(() => ({
      ...state().workshop,
      lessons: [
        { ...lesson, id: 'f/a' },
        { ...lesson, id: 'f/b' },
      ],
    }))
    const again = await startSession({ storage })
    again.actions.dropLessons(['f/a'])
    expect(again.state().workshop.lessons.map(({ id }) => id)).toEqual(['f/b'])
    actions.close()
    again.actions.close()
  })
})
