/** Why a text is not kept as it stands; null for one that will do. */
export function tooLongWords(text: string, most: number): string | null {
  const letters = text.trim().length
  if (letters <= most) return null
  return `Up to ${most} letters; this has ${letters}. It is kept once it is shorter.`
}
