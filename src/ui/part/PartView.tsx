import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Part } from '../../core/model/frame.ts'
import { PreweighError } from '../../core/model/problem.ts'
import { middleOf } from '../../core/mesh/boxOfMesh.ts'
import { placePoint } from '../../core/mesh/pose.ts'
import type { Bounds, Vec3 } from '../../core/model/mesh.ts'
import type { Thumbnail as Picture } from '../../state/store/types.ts'
import type { ViewHandle, ViewName } from '../../view3d/types.ts'
import { useActions } from '../appContext.ts'
import { Thumbnail } from '../ledger/Thumbnail.tsx'
import { shownTheme, watchTheme } from '../theme.ts'

const VIEWS: readonly { readonly id: ViewName; readonly words: string }[] = [
  { id: 'three-quarter', words: 'Slant' },
  { id: 'top', words: 'Top' },
  { id: 'front', words: 'Front' },
  { id: 'side', words: 'Side' },
]

/** A place in the drawing to point at; a new object turns to it anew. */
export interface Ringed {
  readonly place: Bounds
}

interface PartViewProps {
  readonly part: Part
  /** Shown where there is no 3D. */
  readonly picture: Picture | null
  readonly ringed: Ringed | null
}

/**
 * The part in 3D, as it lies on the bed. The drawing code is fetched when the first part is opened.
 */
export function PartView({ part, picture, ringed }: PartViewProps) {
  const { loadMesh } = useActions()
  const box = useRef<HTMLDivElement>(null)
  const [view, setView] = useState<ViewHandle | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const { id, name, meshHash, unit, pose, keepsHairs } = part
  const [originMm, setOrigin] = useState<Vec3 | null>(null)

  useEffect(() => {
    let handle: ViewHandle | null = null
    let gone = false
    const mount = async () => {
      const { mountView } = await import('../../view3d/mountView.ts')
      if (gone || box.current === null) return
      handle = mountView(box.current, {
        theme: shownTheme(),
        partName: '',
        onError: (problem) => {
          setTrouble(problem?.message ?? null)
        },
      })
      setView(handle)
    }
    mount().catch(() => {
      setTrouble('The 3D view could not be loaded. Reload the page to try again.')
    })
    const unwatch = watchTheme((theme) => handle?.setTheme(theme))
    return () => {
      gone = true
      unwatch()
      handle?.dispose()
    }
  }, [])

  useEffect(() => {
    view?.setPartName(name)
  }, [view, name])

  useEffect(() => {
    if (view?.supported !== true) return
    let gone = false
    loadMesh(id).then(
      (mesh) => {
        if (gone) return
        setOrigin(mesh.originMm)
        void view.setMesh(mesh, pose)
      },
      (error: unknown) => {
        if (!gone) setTrouble(error instanceof PreweighError ? error.message : String(error))
      },
    )
    return () => {
      gone = true
    }
  }, [view, loadMesh, id, meshHash, unit, pose, keepsHairs])

  useEffect(() => {
    if (view === null || originMm === null) return
    view.mark(ringed === null ? null : placePoint(originMm, pose, middleOf(ringed.place)))
  }, [view, ringed, originMm, pose])

  return (
    <div className="part-view">
      <div ref={box} className="part-view-box" />
      {view?.supported === false ? <Thumbnail picture={picture} /> : null}
      {trouble === null ? null : <p className="hint">{trouble}</p>}
      {view?.supported === true ? (
        <div className="view-buttons" role="group" aria-label="Point of view">
          {VIEWS.map(({ id: each, words }) => (
            <Button
              key={each}
              className="quiet"
              onPress={() => {
                view.show(each)
              }}
            >
              {words}
            </Button>
          ))}
        </div>
      ) : null}
    </div>
  )
}
