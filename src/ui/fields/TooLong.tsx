import { Text } from 'react-aria-components'

/** Why a text is not kept as it stands; null for one that will do. */
export function tooLongWords(text: string, most: number): string | null {
  const letters = text.trim().length
  if (letters <= most) return null
  return `Up to ${most} letters; this has ${letters}. It is kept once it is shorter.`
}

/** The words below a text field, tied to it for screen readers. */
export function TooLong({ words }: { readonly words: string | null }) {
  if (words === null) return null
  return (
    <Text slot="errorMessage" role="alert" className="field-note wrong-text">
      {words}
    </Text>
  )
}
