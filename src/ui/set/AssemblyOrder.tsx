import { memo, useMemo, useState } from 'react'
import { assemblyWords } from '../../core/aircraft/assembly/assemblyWords.ts'
import { toldWords } from '../../core/words/toldWords.ts'
import { useAppState } from '../appContext.ts'
import { useLate } from '../useLate.ts'
import { usePartShapes } from '../aircraft/usePartShapes.ts'
import { InTurn } from '../inTurn/InTurn.tsx'
import type { AppState } from '../../state/store/types.ts'
import { DrawnSheet } from './DrawnSheet.tsx'
import { TitleBlock } from './TitleBlock.tsx'

/** The order in which joined pieces go together, as numbered steps; opened when it is wanted. */
export const AssemblyOrder = memo(function AssemblyOrder() {
  const hasJoints = useAppState(areJointsThere)
  const [isOpen, setOpen] = useState(false)
  if (!hasJoints) return null
  return (
    <details
      className="assembly-order screen-only"
      open={isOpen}
      onToggle={({ currentTarget }) => {
        setOpen(currentTarget.open)
      }}
    >
      <summary>Order of assembly</summary>
      {isOpen ? <Steps /> : null}
    </details>
  )
})

/** The same on a page of its own behind the Frame sheet, which only paper shows. */
export const OrderPaper = memo(function OrderPaper() {
  const hasJoints = useAppState(areJointsThere)
  if (!hasJoints) return null
  return (
    <DrawnSheet
      className="order-paper"
      title="Order of assembly"
      block={<TitleBlock sheet="frame" title="Order of assembly" />}
    >
      <div className="assembly-order">
        <InTurn>
          <Steps />
        </InTurn>
      </div>
    </DrawnSheet>
  )
})

function areJointsThere({ frame }: AppState): boolean {
  return frame.aircraft.joints.length > 0
}

function Steps() {
  // Nothing waits for these: a slider that is dragged goes first.
  const parts = useLate(useAppState(({ frame }) => frame.parts))
  const aircraft = useLate(useAppState(({ frame }) => frame.aircraft))
  const { shapes, pending } = usePartShapes(parts)
  const steps = useMemo(() => {
    const boxed = parts.map((part) => ({ part, boxMm: shapes.get(part.id)?.boxMm ?? null }))
    return assemblyWords(boxed, aircraft)
  }, [parts, aircraft, shapes])
  // Without the boxes of all parts the order could be another.
  if (pending > 0) {
    return (
      <p className="hint" role="status">
        Looking for what stands before a screw…
      </p>
    )
  }
  return (
    <>
      <ol>
        {steps.map((step) => (
          <li key={step}>{toldWords(step)}</li>
        ))}
      </ol>
      <p className="hint">
        What stands before a screw is told by the boxes of the parts: try each step dry before you
        glue or drive anything home. Propellers go on last, after every test of the motors.
      </p>
    </>
  )
}
