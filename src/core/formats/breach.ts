/** What a rule of the 3MF Core Specification (3MF Consortium) is about. */
export type Subject =
  | 'parts and relationships'
  | 'XML'
  | 'the model element'
  | 'objects'
  | 'build items'
  | 'components'
  | '3D matrices'
  | 'vertices'
  | 'triangles'

/**
 * Advice for a file that breaks a rule and has no clear meaning. The rule is named by its subject:
 * the numbers of the sections move from edition to edition.
 */
export function breach(subject: Subject): string {
  return `The file is damaged or does not keep to the 3MF Core Specification on ${subject}: export it again.`
}
