import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { createPool, type Pool, type PoolJob, type PoolOptions } from '../../src/jobs/pool.ts'
import type { AskMessage, ReplyMessage } from '../../src/jobs/protocol.ts'

/** A worker that does nothing by itself: the test says when it answers, tells or dies. */
interface Puppet {
  readonly number: number
  readonly asked: string[]
  ended: boolean
  answer(text: string): void
  tell(text: string): void
  die(reason: string): void
}

function stage(options: Partial<PoolOptions> = {}) {
  const puppets: Puppet[] = []
  const pool: Pool<string, string, string> = createPool({
    size: 2,
    idleMs: 1000,
    memory: 2,
    spawn(onMessage, onDeath) {
      let id = 0
      const say = (message: ReplyMessage<string, string>) => onMessage(message)
      const puppet: Puppet = {
        number: puppets.length,
        asked: [],
        ended: false,
        answer: (answer) => say({ id, kind: 'answer', answer }),
        tell: (event) => say({ id, kind: 'event', event }),
        die: onDeath,
      }
      puppets.push(puppet)
      return {
        send(message) {
          const { id: asked, ask } = message as AskMessage<string>
          id = asked
          puppet.asked.push(ask)
        },
        end() {
          puppet.ended = true
        },
      }
    },
    ...options,
  })
  const run = (ask: string, job: Partial<PoolJob<string, string>> = {}) =>
    pool.run({ ask, name: ask, priority: 1, weight: 1, urgent: false, keeps: null, ...job })
  return { puppets, pool, run, at: (n: number) => puppets[n] ?? expect.fail(`no worker ${n}`) }
}

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

describe('the order of jobs', () => {
  test('a pool that is made smaller leaves a core to who is waited for, until it is as large again', () => {
    const { puppets, pool, run, at } = stage()
    pool.resize(1)
    void run('a')
    void run('b')
    void run('c', { urgent: true })
    expect(puppets.map(({ asked }) => asked)).toEqual([['a'], ['c']])
    at(1).answer('c')
    expect(puppets).toHaveLength(2)
    expect(at(1).asked).toEqual(['c'])
    pool.resize(2)
    expect(at(1).asked).toEqual(['c', 'b'])
  })

  test('no more workers are started than the pool is large', () => {
    const { puppets, run } = stage()
    for (const ask of ['a', 'b', 'c', 'd']) void run(ask)
    expect(puppets.map((each) => each.asked)).toEqual([['a'], ['b']])
  })

  test('first looks go before counts, small files before large ones, then first come first served', async () => {
    const { run, at } = stage({ size: 1 })
    void run('running')
    void run('count', { priority: 2 })
    void run('large', { weight: 9 })
    void run('small', { weight: 2 })
    void run('small too', { weight: 2 })
    for (let k = 0; k < 5; k++) at(0).answer('done')
    expect(at(0).asked).toEqual(['running', 'small', 'small too', 'large', 'count'])
  })

  test('a job goes to the idle worker that has its mesh', async () => {
    const { run, at } = stage()
    void run('a', { keeps: 'mesh a' })
    void run('b', { keeps: 'mesh b' })
    at(0).answer('')
    at(1).answer('')
    void run('b again', { keeps: 'mesh b' })
    expect(at(1).asked).toEqual(['b', 'b again'])
  })

  test('a worker forgets which mesh it had once it has had as many others as it can keep', () => {
    const { run, at } = stage({ size: 1 })
    for (const keeps of ['x', 'y', 'z']) {
      void run(keeps, { keeps })
      at(0).answer('')
    }
    void run('busy')
    void run('new', { keeps: 'new', weight: 1 })
    void run('x', { keeps: 'x', weight: 2 })
    void run('z', { keeps: 'z', weight: 2 })
    for (let k = 0; k < 3; k++) at(0).answer('')
    expect(at(0).asked.slice(4)).toEqual(['z', 'new', 'x'])
  })

  test('an urgent job starts at once beside a full pool, an ordinary one does not', () => {
    const { puppets, run } = stage({ size: 1 })
    void run('count')
    void run('another')
    expect(puppets).toHaveLength(1)
    void run('look', { urgent: true })
    void run('look 2', { urgent: true })
    expect(puppets.map((each) => each.asked)).toEqual([['count'], ['look']])
  })
})

describe('answers', () => {
  test('events and the answer reach the one who asked', async () => {
    const { run, at } = stage()
    const heard: string[] = []
    const answer = run('a', { onEvent: (event) => heard.push(event) })
    at(0).tell('half')
    at(0).answer('whole')
    expect(await answer).toEqual({ ok: true, value: 'whole' })
    expect(heard).toEqual(['half'])
  })

  test('the worker of an ended job is ended too, and what it still says is not heard', async () => {
    const { run, at, puppets } = stage({ size: 1 })
    const abort = new AbortController()
    const heard: string[] = []
    const answer = run('a', { signal: abort.signal, onEvent: (event) => heard.push(event) })
    const next = run('b')
    abort.abort()
    expect(await answer).toMatchObject({ ok: false, problem: { code: 'cancelled' } })
    expect(at(0).ended).toBe(true)
    at(0).tell('late')
    at(0).answer('late')
    at(0).die('late')
    expect(heard).toEqual([])
    expect(puppets).toHaveLength(2)
    at(1).answer('b')
    expect(await next).toEqual({ ok: true, value: 'b' })
  })

  test('a waiting job that is ended never reaches a worker', async () => {
    const { run, at } = stage({ size: 1 })
    const abort = new AbortController()
    void run('a')
    const waiting = run('b', { signal: abort.signal })
    abort.abort()
    expect(await waiting).toMatchObject({ ok: false, problem: { code: 'cancelled' } })
    at(0).answer('')
    expect(at(0).asked).toEqual(['a'])
    expect(at(0).ended).toBe(false)
  })

  test('a job is tried again in a new worker when its worker dies, then fails and says why', async () => {
    const { run, at, puppets } = stage({ size: 1 })
    const answer = run('wing.stl')
    at(0).die('out of memory')
    expect(at(1).asked).toEqual(['wing.stl'])
    at(1).die('out of memory')
    const outcome = await answer
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'crashed' } })
    expect(JSON.stringify(outcome)).toContain('wing.stl')
    expect(JSON.stringify(outcome)).toContain('out of memory')
    void run('next')
    expect(puppets).toHaveLength(3)
  })

  test('the other jobs go on when one worker dies', async () => {
    const { run, at } = stage()
    const lost = run('a')
    const other = run('b')
    at(0).die('gone')
    at(1).answer('b')
    at(2).answer('a')
    expect(await other).toEqual({ ok: true, value: 'b' })
    expect(await lost).toEqual({ ok: true, value: 'a' })
  })

  test('a browser that starts no worker fails the job instead of leaving it', async () => {
    const { run } = stage({
      spawn() {
        throw new Error('no')
      },
    })
    expect(await run('a')).toMatchObject({ ok: false, problem: { code: 'crashed' } })
  })
})

describe('the end', () => {
  test('idle workers are ended after a while, busy ones are not', () => {
    const { run, at } = stage()
    void run('a')
    void run('b')
    at(0).answer('')
    vi.advanceTimersByTime(1001)
    expect(at(0).ended).toBe(true)
    expect(at(1).ended).toBe(false)
  })

  test('a job in time keeps an idle worker', () => {
    const { run, at } = stage({ size: 1 })
    void run('a')
    at(0).answer('')
    vi.advanceTimersByTime(900)
    void run('b')
    vi.advanceTimersByTime(900)
    expect(at(0).ended).toBe(false)
    expect(at(0).asked).toEqual(['a', 'b'])
  })

  test('closing ends all workers and answers all jobs', async () => {
    const { run, at, pool } = stage({ size: 1 })
    const jobs = [run('a'), run('b')]
    pool.close()
    for (const job of [...jobs, run('c')]) {
      expect(await job).toMatchObject({ ok: false, problem: { code: 'cancelled' } })
    }
    expect(at(0).ended).toBe(true)
  })
})
