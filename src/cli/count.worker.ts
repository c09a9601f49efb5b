import { parentPort } from 'node:worker_threads'
import { createHandler } from '../jobs/handle.ts'
import type { AskMessage, JobEvent, ReplyMessage } from '../jobs/protocol.ts'

/** The page's worker in Node: counts layers for `--find`. */
const handle = createHandler()
const reply = (message: ReplyMessage): void => parentPort?.postMessage(message)

async function work({ id, ask }: AskMessage): Promise<void> {
  const outcome = await handle(ask, (event: JobEvent) => reply({ id, kind: 'event', event }))
  if (outcome.ok) reply({ id, kind: 'answer', answer: outcome.value })
  else reply({ id, kind: 'problem', problem: outcome.problem })
}

parentPort?.on('message', (message: AskMessage) => void work(message))
