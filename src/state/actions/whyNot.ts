/** Plain words for what the browser says when it cannot keep something. */
export function whyNot(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  if (name === 'QuotaExceededError') {
    return 'The browser has no room left for this frame. Save it as a project file, or free disk space.'
  }
  if (name === 'SecurityError' || name === 'InvalidStateError') {
    return (
      'The browser does not let this page keep anything, as in a private window. ' +
      'Save the frame as a project file before you close it.'
    )
  }
  if (name === 'VersionError') {
    return (
      'A newer version of this page has used the storage of this browser. ' +
      'Save the frame as a project file, then reload the page.'
    )
  }
  if (name === 'NotFoundError' || name === 'NotReadableError') {
    return (
      'A dropped file changed or moved before it could be kept. ' +
      'Drop it again, or save the frame as a project file.'
    )
  }
  const words = error instanceof Error && error.message !== '' ? ` (${error.message})` : ''
  return `The browser could not keep this frame${words}. Save it as a project file before you close the page.`
}
