import { lazy, Suspense } from 'react'
import type { LedgerRow } from '../../../state/store/derived.ts'
import { Unfolding } from '../Unfolding.tsx'

const StiffnessBlock = lazy(async () => {
  const { StiffnessBlock: component } = await import('./StiffnessBlock.tsx')
  return { default: component }
})

/** Where a part's stiffness is told; fetched when it is first asked for. */
export function StiffnessPlace({ row }: { readonly row: LedgerRow }) {
  return (
    <Unfolding opens="How it gives, breaks and rings" closes="Close how it gives">
      {() => (
        <Suspense fallback={<p className="hint">Fetching it.</p>}>
          <StiffnessBlock key={row.part.id} row={row} />
        </Suspense>
      )}
    </Unfolding>
  )
}
