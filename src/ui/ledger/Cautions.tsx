import type { Finding } from '../../core/mesh.ts'

interface CautionsProps {
  readonly findings: readonly Finding[]
  /** Why it cannot be printed as it lies; null when it can. */
  readonly bedMark: string | null
}

/** How much about a part needs a look; the sentences stand in the opened part. */
export function Cautions({ findings, bedMark }: CautionsProps) {
  const serious = findings.filter(({ severity }) => severity !== 'note')
  const words: string[] = []
  if (bedMark !== null) words.push(bedMark)
  if (serious.length > 0) {
    words.push(
      serious.length === 1 ? 'one thing to look at' : `${serious.length} things to look at`,
    )
  }
  return words.length === 0 ? null : <span className="cautions">{words.join(', ')}</span>
}
