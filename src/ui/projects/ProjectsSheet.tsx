import { useEffect } from 'react'
import { Sheet } from '../fields/Sheet.tsx'
import { useActions, useAppState } from '../appContext.ts'
import { ProjectRow } from './ProjectRow.tsx'
import { massUnit } from '../../core/words/shownUnits.ts'

interface ProjectsSheetProps {
  readonly isOpen: boolean
  readonly onClose: () => void
}

/** Every frame kept on this device. */
export function ProjectsSheet({ isOpen, onClose }: ProjectsSheetProps) {
  const { listProjects } = useActions()
  const projects = useAppState((state) => state.projects)
  const presentId = useAppState((state) => state.frame.id)
  useEffect(() => {
    if (isOpen) void listProjects()
  }, [isOpen, listProjects])
  return (
    <Sheet title="Frames on this device" isOpen={isOpen} onClose={onClose} wide>
      {projects.length === 0 ? (
        <p className="hint">None yet. A frame is kept here as soon as it has a part.</p>
      ) : (
        <div className="table-scroll" role="region" aria-label="List of frames" tabIndex={0}>
          <table className="list-table projects">
            <thead>
              <tr>
                <th scope="col">Frame</th>
                <th scope="col" className="figures">
                  Parts
                </th>
                <th scope="col" className="figures">
                  Mass <small>{massUnit()}</small>
                </th>
                <th scope="col">Last change</th>
                <th scope="col">
                  <span className="unseen">What to do with it</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {projects.map((project) => (
                <ProjectRow
                  key={project.id}
                  project={project}
                  isPresent={project.id === presentId}
                  onOpened={onClose}
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p className="hint">
        They are kept in this browser only. Browsers may clear what they keep when space runs short:
        save a file of what you cannot do without.
      </p>
    </Sheet>
  )
}
