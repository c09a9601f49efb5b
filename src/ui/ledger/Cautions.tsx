import type { Finding } from '../../core/model/mesh.ts'
import { toldWords } from '../../core/words/toldWords.ts'

interface CautionsProps {
  /** Heaviest first. */
  readonly findings: readonly Finding[]
  /**
   * That it holds several parts, or why it cannot be printed as it lies; null where there is
   * nothing to say.
   */
  readonly mark: string | null
}

/**
 * The heaviest thing found about a part, and how many more; the sentences stand in the opened part.
 */
export function Cautions({ findings, mark }: CautionsProps) {
  const [heaviest, ...others] = findings.filter(({ grade }) => grade !== 'note')
  const words: string[] = []
  if (mark !== null) words.push(mark)
  if (heaviest !== undefined) {
    words.push(
      others.length === 0
        ? toldWords(heaviest.short)
        : `${toldWords(heaviest.short)}, ${others.length} more`,
    )
  }
  return words.length === 0 ? null : <span className="cautions">{words.join(', ')}</span>
}
