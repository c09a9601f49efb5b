import * as v from 'valibot'
import type { Frame } from '../../core/model/frame.ts'
import type { Outcome, Problem } from '../../core/model/problem.ts'
import type { MeshSource, PackEntry, UnpackAnswer } from '../../jobs/asks/fileAsks.ts'
import { PROJECT_ENTRY, PROJECT_MARK } from '../../jobs/projectMark.ts'
import { meshesNeededBy, type NeededMesh } from './meshHashesOf.ts'
import { parseFrame } from './parseFrame.ts'

/** Ending of a project file's name. Inside it is a ZIP. */
export const PROJECT_ENDING = '.preweigh'

const MESH_FOLDER = 'meshes/'

/** What came out of a project file, sound or not. */
export interface OpenedProject {
  readonly frame: Frame
  readonly meshes: readonly MeshSource[]
  /** What could not be read, each in a sentence. */
  readonly complaints: readonly string[]
}

const ProjectSchema = v.object({ format: v.literal(PROJECT_MARK), frame: v.unknown() })

/** The entries of a project file. The frame comes first, so that a file cut short still has it. */
export function projectEntries(
  frame: Frame,
  meshes: ReadonlyMap<string, Blob>,
  savedAt: number,
): readonly PackEntry[] {
  const project = { format: PROJECT_MARK, savedAt: new Date(savedAt).toISOString(), frame }
  return [
    { path: PROJECT_ENTRY, content: JSON.stringify(project, null, 2) },
    ...[...meshes].map(([hash, content]) => ({ path: MESH_FOLDER + hash, content })),
  ]
}

/**
 * Makes a frame of the entries of a project file; keeps what is sound, lists the rest. Never
 * throws.
 */
export async function readProject(unpacked: UnpackAnswer): Promise<Outcome<OpenedProject>> {
  const { entries, cutShort } = unpacked
  const project = entries.find((entry) => entry.path === PROJECT_ENTRY)
  if (project === undefined) return { ok: false, problem: noProject('it has no list of parts') }
  if (!project.ok)
    return {
      ok: false,
      problem: noProject(`its list of parts ${project.reason.replace(/\.$/, '')}`),
    }
  const listed = await parseJson(project.blob)
  const shell = v.safeParse(ProjectSchema, listed)
  if (!shell.success)
    return { ok: false, problem: noProject('its list of parts is not one of ours') }
  const parsed = parseFrame(shell.output.frame)
  if (!parsed.ok) return parsed

  const { frame } = parsed.value
  const complaints = [...parsed.value.complaints]
  if (cutShort) complaints.push('The file is cut short; what came before the cut was read.')
  const meshes: MeshSource[] = []
  for (const [hash, needs] of needsByMesh(frame)) {
    const entry = entries.find((each) => each.path === MESH_FOLDER + hash)
    const why = flaw(entry, hash)
    if (entry?.ok === true && why === null) {
      meshes.push({ hash, name: needs[0]?.fileName ?? hash, blob: entry.blob })
    } else {
      const names = needs.map(({ words }) => words).join(', ')
      complaints.push(
        `The mesh of ${names} (${needs[0]?.fileName ?? hash}) ${(why ?? 'is missing').replace(/\.$/, '')}.`,
      )
    }
  }
  return { ok: true, value: { frame, meshes, complaints } }
}

function flaw(entry: UnpackAnswer['entries'][number] | undefined, hash: string): string | null {
  if (entry === undefined) return 'is missing from the file'
  if (!entry.ok) return entry.reason
  return entry.hash === hash ? null : 'is not the one that was saved: its bytes have changed'
}

function needsByMesh(frame: Frame): ReadonlyMap<string, readonly NeededMesh[]> {
  const groups = new Map<string, readonly NeededMesh[]>()
  for (const need of meshesNeededBy(frame)) {
    groups.set(need.hash, [...(groups.get(need.hash) ?? []), need])
  }
  return groups
}

async function parseJson(blob: Blob): Promise<unknown> {
  try {
    return JSON.parse(await blob.text())
  } catch {
    return null
  }
}

function noProject(reason: string): Problem {
  return {
    code: 'bad-project',
    message: `This project file cannot be opened: ${reason}.`,
    advice: 'Take another copy of it, or start anew from the mesh files.',
  }
}
