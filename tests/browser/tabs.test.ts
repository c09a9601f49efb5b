import { afterEach, describe, expect, test } from 'vitest'
import type { Claims } from '../../src/state/storage/claims.ts'
import { createLockClaims } from '../../src/state/storage/lockClaims.ts'
import { createMemoryStorage } from '../../src/state/storage/memoryStorage.ts'
import { boxFile, startSession } from '../support/session.ts'

const opened: Claims[] = []
let scopes = 0
let scope = ''

/** What one tab would make; locks do not care that both live in the same page. */
function tab(locks: LockManager = navigator.locks): Claims {
  const claims = createLockClaims(locks, new BroadcastChannel(scope), scope)
  opened.push(claims)
  return claims
}

function freshScope(): void {
  scope = `test ${(scopes += 1)} ${performance.now()}`
}

afterEach(() => {
  for (const claims of opened.splice(0)) claims.close()
})

describe('the claim on a project', () => {
  test('belongs to one tab at a time, until that closes or goes on to another project', async () => {
    freshScope()
    const [a, b] = [tab(), tab()]
    expect(await a.hold('p')).toBe(true)
    expect(await a.hold('p')).toBe(true)
    expect(await b.hold('p')).toBe(false)
    expect(await b.isElsewhere('p')).toBe(true)
    expect(await a.isElsewhere('p')).toBe(false)
    expect(await b.hold('q')).toBe(true)
    a.keepOnly('r')
    expect(await b.hold('p')).toBe(true)
    b.close()
    expect(await a.hold('p')).toBe(true)
  })

  test('is handed over only after the first tab has done its writing', async () => {
    freshScope()
    const [a, b] = [tab(), tab()]
    await a.hold('p')
    const order: string[] = []
    a.onTaken(async (id) => {
      order.push(`${id} is asked for`)
      await Promise.resolve()
      order.push('written')
    })
    await b.takeOver('p')
    order.push('taken')
    expect(order).toEqual(['p is asked for', 'written', 'taken'])
    expect(await a.hold('p')).toBe(false)
    expect(await b.hold('p')).toBe(true)
  })

  test('is taken from a tab that does not answer, and that tab hears of it', async () => {
    freshScope()
    const [a, b] = [tab(), tab()]
    await a.hold('p')
    let heard = 0
    let release = () => {}
    a.onTaken(() => {
      heard += 1
      return new Promise((resolve) => {
        release = resolve
      })
    })
    await b.takeOver('p')
    expect(await b.hold('p')).toBe(true)
    expect(heard).toBeGreaterThan(0)
    release()
    expect(await a.hold('p')).toBe(false)
  })

  test('waits a moment for a page that is being reloaded', async () => {
    freshScope()
    const [a, b] = [tab(), tab()]
    await a.hold('p')
    const next = b.hold('p')
    a.close()
    expect(await next).toBe(true)
  })

  test('knows whether another tab has the page open', async () => {
    freshScope()
    const a = tab()
    expect(await a.isAlone()).toBe(true)
    const b = tab()
    await b.hold('p')
    expect(await a.isAlone()).toBe(false)
    b.close()
    await expect.poll(() => a.isAlone()).toBe(true)
  })
})

test('a project moves between two tabs and back without losing a change', async () => {
  freshScope()
  const storage = createMemoryStorage()
  const first = await startSession({ storage, claims: tab() })
  await first.actions.addFiles([boxFile('a.stl', 12, 12, 4)])
  await first.actions.settled()
  const second = await startSession({ storage, claims: tab() })
  expect(second.state().elsewhere?.why).toBe('open')

  first.actions.renameFrame('Changed just before')
  await second.actions.takeOver()
  expect(second.state().frame.name).toBe('Changed just before')
  expect(second.state().elsewhere).toBeNull()
  expect(first.state().elsewhere?.why).toBe('taken')
  first.actions.renameFrame('Not any more')
  expect(first.state().frame.name).toBe('Changed just before')

  second.actions.renameFrame('By the second')
  await first.actions.takeOver()
  expect(first.state().frame.name).toBe('By the second')
  expect(first.state().elsewhere).toBeNull()
  expect(second.state().elsewhere?.why).toBe('taken')
  first.actions.close()
  second.actions.close()
})
