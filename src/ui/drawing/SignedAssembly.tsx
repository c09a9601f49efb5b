import { Assembly, type AssemblyProps } from './Assembly.tsx'
import { SignList } from './SignList.tsx'
import { useFrameSigns } from './useFrameSigns.ts'

/** The frame as it stands, with what runs into what marked and told below. */
export function SignedAssembly(props: Omit<AssemblyProps, 'laid' | 'ghosts' | 'signs'>) {
  const signs = useFrameSigns()
  return (
    <>
      <Assembly {...props} signs={signs} />
      <SignList signs={signs} />
    </>
  )
}
