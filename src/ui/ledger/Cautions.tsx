import type { Finding } from '../../core/model/mesh.ts'

interface CautionsProps {
  readonly findings: readonly Finding[]
  /** That it holds several parts, or why it cannot be printed as it lies; null where there is nothing to say. */
  readonly mark: string | null
}

/** How much about a part needs a look; the sentences stand in the opened part. */
export function Cautions({ findings, mark }: CautionsProps) {
  const serious = findings.filter(({ severity }) => severity !== 'note')
  const words: string[] = []
  if (mark !== null) words.push(mark)
  if (serious.length > 0) {
    words.push(
      serious.length === 1 ? 'one thing to look at' : `${serious.length} things to look at`,
    )
  }
  return words.length === 0 ? null : <span className="cautions">{words.join(', ')}</span>
}
