/** The entry of a ZIP that makes it a project file, and what that entry says of itself. */
export const PROJECT_ENTRY = 'project.json'
export const PROJECT_MARK = 'preweigh-project'
