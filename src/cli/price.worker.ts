import { parentPort } from 'node:worker_threads'
import type { AskMessage, ReplyMessage } from '../jobs/protocol.ts'
import type { FileAsk } from './priceAll.ts'
import { pricePath } from './priceFile.ts'
import type { PartReport } from './report.ts'

parentPort?.on('message', ({ id, ask }: AskMessage<FileAsk>) => {
  const answer = pricePath(ask.file, ask.path, ask.options, () => undefined)
  const reply: ReplyMessage<never, readonly PartReport[]> = { id, kind: 'answer', answer }
  parentPort?.postMessage(reply)
})
