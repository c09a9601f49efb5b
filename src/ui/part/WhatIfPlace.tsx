import { lazy, Suspense } from 'react'
import type { LedgerRow } from '../../state/store/derived.ts'
import { Unfolding } from './Unfolding.tsx'

const WhatIf = lazy(async () => {
  const { WhatIf: component } = await import('../choose/whatIf/WhatIf.tsx')
  return { default: component }
})

/**
 * What each setting of the part would do, in small pictures; fetched and counted when it is asked
 * for.
 */
export function WhatIfPlace({ row }: { readonly row: LedgerRow }) {
  return (
    <Unfolding opens="What if: each setting drawn" closes="Close what if">
      {() => (
        <Suspense fallback={<p className="hint">Fetching it.</p>}>
          <WhatIf key={row.part.id} row={row} />
        </Suspense>
      )}
    </Unfolding>
  )
}
