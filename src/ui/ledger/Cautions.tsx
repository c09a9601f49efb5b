import type { Finding } from '../../core/mesh.ts'

/** How much about a mesh needs a look; the sentences stand in the opened part. */
export function Cautions({ findings }: { readonly findings: readonly Finding[] }) {
  const serious = findings.filter(({ severity }) => severity !== 'note')
  if (serious.length === 0) return null
  return (
    <span className="cautions">
      {serious.length === 1 ? 'one thing to look at' : `${serious.length} things to look at`}
    </span>
  )
}
