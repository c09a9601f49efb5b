import { describe, expect, test } from 'vitest'
import { readDrop } from '../../src/ui/intake/readDrop.ts'

// A script may not make a DataTransfer that holds folders, so these stand in for what the browser
// hands over.

function fileItem(name: string) {
  const file = new File(['x'], name)
  return { kind: 'file', getAsFile: () => file, webkitGetAsEntry: () => fileEntry(name) }
}

function fileEntry(name: string) {
  return {
    isDirectory: false,
    isFile: true,
    name,
    file: (take: (file: File) => void) => {
      take(new File(['x'], name))
    },
  }
}

/** Hands its children over in batches, as browsers do, and then an empty one. */
function folderEntry(children: readonly object[], batch = 2) {
  return {
    isDirectory: true,
    isFile: false,
    createReader() {
      let at = 0
      return {
        readEntries(take: (entries: readonly object[]) => void) {
          take(children.slice(at, at + batch))
          at += batch
        },
      }
    },
  }
}

function folderItem(children: readonly object[]) {
  return { kind: 'file', getAsFile: () => null, webkitGetAsEntry: () => folderEntry(children) }
}

function transferOf(...items: object[]): DataTransfer {
  return { items } as unknown as DataTransfer
}

describe('a drop', () => {
  test('gives loose files whatever their name', async () => {
    const intake = await readDrop(transferOf(fileItem('arm.stl'), fileItem('arm without ending')))
    expect(intake.files.map(({ name }) => name)).toEqual(['arm.stl', 'arm without ending'])
    expect(intake.leftAlone).toBe(0)
  })

  test('walks folders to the bottom, takes the meshes by name and counts the rest', async () => {
    const deep = folderEntry([fileEntry('boom.3mf'), fileEntry('photo.jpg')])
    const folder = folderItem([
      fileEntry('a.stl'),
      fileEntry('B.OBJ'),
      fileEntry('readme.md'),
      deep,
      fileEntry('set.zip'),
    ])
    const intake = await readDrop(transferOf(folder, fileItem('loose.stl')))
    expect(intake.files.map(({ name }) => name)).toEqual([
      'loose.stl',
      'a.stl',
      'B.OBJ',
      'boom.3mf',
      'set.zip',
    ])
    expect(intake.leftAlone).toBe(2)
  })
})
