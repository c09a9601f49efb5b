/// <reference lib="webworker" />
import { createHandler } from './handle.ts'
import type { AskMessage, JobEvent, ReplyMessage } from './protocol.ts'
import { buffersIn } from './transfer.ts'

declare const self: DedicatedWorkerGlobalScope

const handle = createHandler()

function reply(message: ReplyMessage, transfer: Transferable[] = []): void {
  self.postMessage(message, transfer)
}

async function work({ id, ask }: AskMessage): Promise<void> {
  const outcome = await handle(ask, (event: JobEvent) => reply({ id, kind: 'event', event }))
  if (!outcome.ok) reply({ id, kind: 'problem', problem: outcome.problem })
  else reply({ id, kind: 'answer', answer: outcome.value }, buffersIn(outcome.value))
}

self.addEventListener('message', ({ data }: MessageEvent<AskMessage>) => void work(data))
