import { useAppState } from '../appContext.ts'
import { Assembly, type AssemblyProps } from './Assembly.tsx'
import { SignList } from './SignList.tsx'
import { useFrameSigns } from './useFrameSigns.ts'

/** The frame as it stands, with what runs into what marked and told below. */
export function SignedAssembly(props: Pick<AssemblyProps, 'onLight' | 'onChoose'>) {
  const chosenId = useAppState(({ openPartId }) => openPartId)
  const signs = useFrameSigns()
  return (
    <>
      <Assembly {...props} twinId="item-list" chosenId={chosenId} signs={signs} />
      <SignList signs={signs} />
    </>
  )
}
