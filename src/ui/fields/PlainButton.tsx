import type { ReactNode, Ref } from 'react'

interface PlainButtonProps {
  readonly className: string
  readonly onPress: () => void
  readonly isDisabled?: boolean
  readonly 'aria-label'?: string | undefined
  readonly 'aria-haspopup'?: 'menu'
  readonly 'aria-expanded'?: boolean
  readonly ref?: Ref<HTMLButtonElement>
  readonly children: ReactNode
}

/**
 * The browser's own button, for what a first visit loads: the component library comes with the
 * first sheet.
 */
export function PlainButton({ onPress, isDisabled = false, ...rest }: PlainButtonProps) {
  return <button type="button" disabled={isDisabled} onClick={onPress} {...rest} />
}
