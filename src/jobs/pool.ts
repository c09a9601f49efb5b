import type { Outcome, Problem } from '../core/model/problem.ts'
import { CANCELLED, crashed } from './problemOf.ts'
import type { AskMessage, ReplyMessage } from './protocol.ts'

/** A worker as the pool sees it; `webWorker.ts` makes one of the browser's. */
export interface PoolWorker {
  send(message: unknown): void
  /** Nothing is heard of it afterwards. */
  end(): void
}

/**
 * Starts a worker. `onDeath` comes when it fails to load or breaks outside its own error handling.
 */
export type Spawn = (
  onMessage: (data: unknown) => void,
  onDeath: (reason: string) => void,
) => PoolWorker

export interface PoolOptions {
  readonly spawn: Spawn
  /** Most workers busy with ordinary jobs; urgent ones may use one more. */
  readonly size: number
  /** Workers are ended after this long without a job, ms. */
  readonly idleMs: number
  /** How many meshes a worker keeps: the pool sends a job to the worker that has its mesh. */
  readonly memory: number
}

export interface PoolJob<A, E> {
  readonly ask: A
  /** For messages. */
  readonly name: string
  /** Lower goes first. */
  readonly priority: number
  /** Among equal priorities lower goes first: small files before large ones. */
  readonly weight: number
  /** Someone waits for the answer right now: need not wait until an ordinary job is done. */
  readonly urgent: boolean
  /** What a worker keeps once it has done the job; null for nothing. */
  readonly keeps: string | null
  readonly onEvent?: ((event: E) => void) | undefined
  readonly signal?: AbortSignal | undefined
}

export interface Pool<A, E, R> {
  /** Never rejects. A job whose worker dies is tried once more, then answered `crashed`. */
  run(job: PoolJob<A, E>): Promise<Outcome<R>>
  /** Begins ordinary jobs on no more workers than so many from now on; none is ended for it. */
  resize(size: number): void
  close(): void
}

interface Task<A, E, R> {
  readonly id: number
  readonly job: PoolJob<A, E>
  crashes: number
  /** Answers the job; later calls do nothing. */
  readonly settle: (outcome: Outcome<R>) => void
}

interface Slot<A, E, R> {
  readonly worker: PoolWorker
  task: Task<A, E, R> | null
  kept: readonly string[]
  idle: ReturnType<typeof setTimeout> | null
}

/**
 * A few workers and a queue. A worker does one job at a time; ending a job means ending its worker.
 */
export function createPool<A, E, R>(options: PoolOptions): Pool<A, E, R> {
  const slots = new Set<Slot<A, E, R>>()
  let queue: readonly Task<A, E, R>[] = []
  let nextId = 1
  let closed = false
  let { size } = options

  function end(slot: Slot<A, E, R>): void {
    slots.delete(slot)
    if (slot.idle !== null) clearTimeout(slot.idle)
    slot.worker.end()
  }

  function openSlot(): Slot<A, E, R> {
    const worker = options.spawn(
      (data) => hear(slot, data as ReplyMessage<E, R>),
      (reason) => lose(slot, reason),
    )
    const slot: Slot<A, E, R> = { worker, task: null, kept: [], idle: null }
    slots.add(slot)
    return slot
  }

  function hear(slot: Slot<A, E, R>, message: ReplyMessage<E, R>): void {
    const { task } = slot
    if (!slots.has(slot) || task?.id !== message.id) return
    if (message.kind === 'event') {
      task.job.onEvent?.(message.event)
      return
    }
    const { keeps } = task.job
    if (keeps !== null) {
      slot.kept = [...slot.kept.filter((each) => each !== keeps), keeps].slice(-options.memory)
    }
    release(slot)
    task.settle(
      message.kind === 'answer'
        ? { ok: true, value: message.answer }
        : { ok: false, problem: message.problem },
    )
    pump()
  }

  function release(slot: Slot<A, E, R>): void {
    slot.task = null
    slot.idle = setTimeout(() => end(slot), options.idleMs)
  }

  /** The worker died under its job. */
  function lose(slot: Slot<A, E, R>, reason: string): void {
    const { task } = slot
    if (!slots.has(slot)) return
    end(slot)
    if (task !== null) {
      task.crashes += 1
      if (task.crashes < 2) queue = [task, ...queue]
      else task.settle({ ok: false, problem: crashed(task.job.name, reason) })
    }
    pump()
  }

  function drop(task: Task<A, E, R>, problem: Problem): void {
    queue = queue.filter((each) => each !== task)
    for (const slot of slots) if (slot.task === task) end(slot)
    task.settle({ ok: false, problem })
    pump()
  }

  function pump(): void {
    while (queue.length > 0) {
      const busy = [...slots].filter((slot) => slot.task !== null).length
      const open = queue.filter((task) => busy < size + (task.job.urgent ? 1 : 0))
      const pair = match(open)
      if (pair === null) return
      queue = queue.filter((task) => task !== pair.task)
      start(pair.slot ?? tryOpen(), pair.task)
    }
  }

  /** The job that comes next, with the idle worker that has its mesh, or any idle one, or none. */
  function match(
    open: readonly Task<A, E, R>[],
  ): { task: Task<A, E, R>; slot: Slot<A, E, R> | null } | null {
    const [first] = open.toSorted(inOrder)
    if (first === undefined) return null
    const idle = [...slots].filter((slot) => slot.task === null)
    const has = (task: Task<A, E, R>) =>
      idle.find((slot) => task.job.keeps !== null && slot.kept.includes(task.job.keeps))
    for (const task of open) {
      const slot = task.job.priority === first.job.priority ? has(task) : undefined
      if (slot !== undefined) return { task, slot }
    }
    return { task: first, slot: idle[0] ?? null }
  }

  function tryOpen(): Slot<A, E, R> | null {
    try {
      return openSlot()
    } catch {
      return null
    }
  }

  function start(slot: Slot<A, E, R> | null, task: Task<A, E, R>): void {
    if (slot === null) {
      const problem = crashed(task.job.name, 'the browser starts no worker')
      task.settle({ ok: false, problem })
      return
    }
    if (slot.idle !== null) clearTimeout(slot.idle)
    slot.idle = null
    slot.task = task
    const message: AskMessage<A> = { id: task.id, ask: task.job.ask }
    slot.worker.send(message)
  }

  return {
    run(job) {
      return new Promise((resolve) => {
        const cancelled = { ok: false, problem: CANCELLED } as const
        const { signal } = job
        if (closed || signal?.aborted === true) {
          resolve(cancelled)
          return
        }
        const abort = () => drop(task, CANCELLED)
        const task: Task<A, E, R> = {
          id: nextId++,
          job,
          crashes: 0,
          settle(outcome) {
            signal?.removeEventListener('abort', abort)
            resolve(outcome)
          },
        }
        signal?.addEventListener('abort', abort)
        queue = [...queue, task]
        pump()
      })
    },
    resize(to) {
      const grows = to > size
      size = to
      if (grows) pump()
    },
    close() {
      closed = true
      const tasks = [...queue, ...[...slots].flatMap((slot) => slot.task ?? [])]
      queue = []
      for (const slot of slots) end(slot)
      for (const task of tasks) task.settle({ ok: false, problem: CANCELLED })
    },
  }
}

function inOrder<A, E, R>(a: Task<A, E, R>, b: Task<A, E, R>): number {
  return a.job.priority - b.job.priority || a.job.weight - b.job.weight || a.id - b.id
}
