import { memo } from 'react'
import { Button } from 'react-aria-components'
import type { Finding } from '../../core/model/mesh.ts'
import type { Thumbnail as Picture } from '../../state/store/types.ts'
import { useActions } from '../appContext.ts'
import { Cautions } from './Cautions.tsx'
import { Thumbnail } from './Thumbnail.tsx'

interface OpenButtonProps {
  readonly partId: string
  readonly panelId: string
  readonly name: string
  readonly picture: Picture | null
  readonly findings: readonly Finding[]
  readonly mark: string | null
  readonly isOpen: boolean
  readonly isWorking: boolean
}

/** Picture and name of a part; pressed, it opens the part or closes it. */
export const OpenButton = memo(function OpenButton(props: OpenButtonProps) {
  const { partId, panelId, name, picture, findings, mark, isOpen, isWorking } = props
  const { openPart } = useActions()
  return (
    <Button
      className="row-open-button"
      aria-expanded={isOpen}
      aria-controls={panelId}
      onPress={() => {
        openPart(isOpen ? null : partId)
      }}
    >
      <Thumbnail picture={picture} />
      <span className={isWorking ? 'row-words row-working' : 'row-words'}>
        <span className="row-name">
          {name} <span className="caret" aria-hidden="true" />
        </span>
        <Cautions findings={findings} mark={mark} />
      </span>
    </Button>
  )
})
