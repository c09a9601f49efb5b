import { Text } from 'react-aria-components'

/** The words below a text field, tied to it for screen readers. */
export function TooLong({ words }: { readonly words: string | null }) {
  if (words === null) return null
  return (
    <Text slot="errorMessage" role="alert" className="field-note wrong-text">
      {words}
    </Text>
  )
}
