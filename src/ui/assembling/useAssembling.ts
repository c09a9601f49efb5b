import { useCallback, useMemo, useState } from 'react'
import { after, mapDirection, STAY, type RigidMap } from '../../core/mesh/rigidMaps.ts'
import { CLASH_MM3 } from '../../core/joints/frameClashes.ts'
import { handOn } from '../../core/joints/handOn.ts'
import { jointMotion, wayOf } from '../../core/joints/jointMotion.ts'
import type { PlacedPieces } from '../../core/joints/placePieces.ts'
import { standingPieces, type StandingPiece } from '../../core/joints/standingPieces.ts'
import type { Repeat } from '../../core/joints/repeatWay.ts'
import { turnsOver } from '../../core/joints/turnOver.ts'
import { distinctWays, type Way } from '../../core/joints/waysFor.ts'
import type { Joint } from '../../core/model/joints.ts'
import { newId } from '../../state/store/newId.ts'
import { useActions, useAppState } from '../appContext.ts'
import { useFramePlaces } from '../useFramePlaces.ts'
import { useJoinable } from '../useJoinable.ts'
import { looseKinds, pieceName, type Joinable, type LooseKind } from './pieces.ts'
import { useClashes, type LaidOne } from './useClashes.ts'
import { useOffers, type Offers } from './useOffers.ts'
import { useRepeats, useWays, type MeetingFrame } from './useWays.ts'

/** So many ways are shown at first; the rest behind one step. */
const MOST_SHOWN = 6
/** More are not shown at all. */
const MOST_WAYS = 48

/** A way that is shown, and what of it runs into what stands. */
export interface ShownWay {
  readonly way: Way
  /** Places in what stands, with the volume. */
  readonly clashes: readonly { readonly at: number; readonly mm3: number }[]
}

export interface Assembling {
  readonly offers: Offers
  /** The ways of the chosen piece are not told yet. */
  readonly isLooking: boolean
  readonly lookAgain: () => void
  readonly placed: PlacedPieces
  readonly standing: readonly StandingPiece[]
  readonly laid: readonly LaidOne[]
  readonly kinds: readonly LooseKind[]
  readonly kind: LooseKind | null
  readonly choose: (key: string) => void
  /** Ways of the chosen piece, and how many there are in all. */
  readonly ways: readonly ShownWay[]
  readonly total: number
  readonly showsAll: boolean
  readonly showAll: () => void
  readonly at: number
  readonly pick: (at: number) => void
  /** The way that is picked, turned over as often as was asked. */
  readonly way: Way | null
  readonly turn: () => boolean
  readonly repeats: readonly Repeat[]
  readonly again: number
  readonly repeat: (at: number) => void
  readonly drop: () => void
  /** Pieces that the picked way and its repeat would place. */
  readonly ghosts: readonly LaidOne[]
  /** What those would run into. */
  readonly ghostClashes: ShownWay['clashes']
  readonly join: () => boolean
  readonly joinByHand: (joint: Omit<Joint, 'id'>) => void
  /** Makes this loose piece the one that all is built upon; only while nothing stands. */
  readonly buildOn: (key: string) => void
  readonly isBare: boolean
}

const NONE: readonly Way[] = []

/** All that is chosen while a frame is put together, and what follows from it. */
export function useAssembling(): Assembling {
  const { putAircraft } = useActions()
  const parts = useJoinable()
  const joints = useAppState((state) => state.frame.aircraft.joints)
  const [offers, lookAgain] = useOffers()
  const placed = useFramePlaces()
  const [baseKey, setBase] = useState<string | null>(null)
  const [chosenKey, setChosen] = useState<string | null>(null)
  const [picks, setPicks] = useState({ at: 0, over: 0, again: 0 })
  const [dropped, setDropped] = useState<readonly string[]>([])
  const [showsAll, setShowsAll] = useState(false)

  const isBare = !standingPieces(parts, placed).some(({ partId }) => isPrinted(parts, partId))
  const found = offers.kind === 'found' ? offers : null
  const standing = useMemo((): readonly StandingPiece[] => {
    if (!isBare) return standingPieces(parts, placed)
    const kinds = looseKinds(parts, [])
    const base = (kinds.find(({ key }) => key === baseKey) ?? kinds[0])?.pieces[0]
    if (base === undefined) return []
    const { partId, piece } = base
    return [{ partId, piece, motion: STAY, isMirrored: false }, ...standingPieces(parts, placed)]
  }, [isBare, placed, parts, baseKey])
  const laid = useMemo(() => standing.map(({ partId, motion }) => ({ partId, motion })), [standing])
  const kinds = useMemo(() => looseKinds(parts, standing), [parts, standing])
  const kind = kinds.find(({ key }) => key === chosenKey) ?? kinds[0] ?? null
  const piece = kind?.pieces[0] ?? null

  const meeting = useMemo(
    (): MeetingFrame | null =>
      found === null
        ? null
        : {
            frame: { standing, offers: found.offers, joints, shapes: found.shapes },
            offersId: found.id,
          },
    [standing, found, joints],
  )
  const { ways: all, isLooking } = useWays(piece, meeting)
  const listed = useMemo(() => {
    const own = showsAll ? all : distinctWays(all)
    const isLast = ({ key }: Way) => dropped.includes(`${kind?.key ?? ''} ${key}`)
    return [...own.filter((way) => !isLast(way)), ...own.filter(isLast)].slice(0, MOST_WAYS)
  }, [all, showsAll, dropped, kind])
  const checked = useMemo(
    () => listed.slice(0, showsAll ? MOST_WAYS : 2 * MOST_SHOWN),
    [listed, showsAll],
  )
  const waysLaid = useMemo(
    () => checked.map(({ joint, motion }) => ({ partId: joint.b.partId, motion })),
    [checked],
  )
  const isPressed = useCallback(
    (way: number, other: number) => {
      const a = checked[way]?.joint.a
      const stands = standing[other]
      // Judged already, with room for a press fit.
      return a?.partId === stands?.partId && a?.piece === stands?.piece
    },
    [checked, standing],
  )
  const volumes = useClashes(waysLaid, laid, isPressed)
  const ways = useMemo(() => {
    const told = checked.map((way, i): ShownWay => ({
      way,
      clashes: clashesAt(volumes?.[i]),
    }))
    const clear = told.filter(({ clashes }) => clashes.length === 0)
    const sorted = [...clear, ...told.filter(({ clashes }) => clashes.length > 0)]
    return showsAll ? sorted : sorted.slice(0, MOST_SHOWN)
  }, [checked, volumes, showsAll])

  const at = Math.min(picks.at, Math.max(0, ways.length - 1))
  const picked = ways[at]?.way ?? null
  const variants = useMemo((): readonly Way[] => {
    if (picked === null) return NONE
    const stands = standing.find(
      ({ partId, piece: n }) => partId === picked.joint.a.partId && n === picked.joint.a.piece,
    )
    const base = stands?.motion ?? STAY
    const over = turnsOver(picked.joint).map((joint, i): Way => ({
      ...picked,
      joint,
      out: mapDirection(base, wayOf(joint.a)),
      motion: after(base, jointMotion(joint)),
      key: `${picked.key} over ${i}`,
      also: [],
    }))
    return [picked, ...over]
  }, [picked, standing])
  const way = variants[picks.over % Math.max(1, variants.length)] ?? null
  const others = useMemo(() => (kind === null ? [] : othersOf(kind, kinds)), [kind, kinds])
  const repeats = useRepeats(way, others, meeting)
  const again = Math.min(picks.again, Math.max(0, repeats.length - 1))
  const ghosts = useMemo(
    () =>
      (repeats[again]?.placed ?? []).map(({ joint, motion }) => ({
        partId: joint.b.partId,
        motion,
      })),
    [repeats, again],
  )
  const isOwn = useCallback(
    (_: number, other: number) => {
      const stands = standing[other]
      const a = way?.joint.a
      const isA = a?.partId === stands?.partId && a?.piece === stands?.piece
      return isA && way?.joint.kind === 'shaft'
    },
    [standing, way],
  )
  const ghostVolumes = useClashes(ghosts, laid, isOwn)
  const ghostClashes = useMemo(
    () =>
      standing.flatMap((_, j) => {
        const mm3 = (ghostVolumes ?? []).reduce((sum, row) => sum + (row[j] ?? 0), 0)
        return mm3 > CLASH_MM3 ? [{ at: j, mm3 }] : []
      }),
    [ghostVolumes, standing],
  )

  const add = (added: readonly Omit<Joint, 'id'>[]) => {
    const [first] = added
    if (first === undefined) return
    const count = added.length > 1 ? `, ${added.length} joints` : ''
    putAircraft(
      {
        joints: [...joints, ...added.map((joint) => ({ ...handOn(joint, joints), id: newId() }))],
      },
      `join “${pieceName(parts, first.b)}” and “${pieceName(parts, first.a)}”${count}`,
    )
    setPicks({ at: 0, over: 0, again: 0 })
    setShowsAll(false)
  }
  return {
    offers,
    isLooking: isLooking || offers.kind === 'looking',
    lookAgain,
    placed,
    standing,
    laid,
    kinds,
    kind,
    choose(key) {
      setChosen(key)
      setPicks({ at: 0, over: 0, again: 0 })
      setShowsAll(false)
    },
    ways,
    total: all.length,
    showsAll,
    showAll() {
      setShowsAll(true)
    },
    at,
    pick(next) {
      setPicks({ at: next, over: 0, again: 0 })
    },
    way,
    turn() {
      setPicks({ ...picks, over: (picks.over + 1) % Math.max(1, variants.length), again: 0 })
      return variants.length > 1
    },
    repeats,
    again,
    repeat(next) {
      setPicks({ ...picks, again: next })
    },
    drop() {
      if (picked === null || kind === null) return
      setDropped([...dropped, `${kind.key} ${picked.key}`])
      setPicks({ at: 0, over: 0, again: 0 })
    },
    ghosts,
    ghostClashes,
    join() {
      const chosen = repeats[again]
      if (chosen === undefined || way === null) return false
      add([...chosen.placed.map(({ joint }) => joint), ...way.also])
      return true
    },
    joinByHand(joint) {
      add([joint])
    },
    buildOn: setBase,
    isBare,
  }
}

function clashesAt(volumes: readonly number[] | undefined): ShownWay['clashes'] {
  return (volumes ?? []).flatMap((mm3, at) => (mm3 > CLASH_MM3 ? [{ at, mm3 }] : []))
}

function isPrinted(parts: readonly Joinable[], partId: string): boolean {
  return parts.some(({ id, body }) => id === partId && body === undefined)
}

/** Loose pieces of the same part of either hand, without the chosen one. */
function othersOf(kind: LooseKind, kinds: readonly LooseKind[]) {
  return kinds
    .filter(({ part }) => part.id === kind.part.id)
    .flatMap(({ pieces }) => pieces)
    .filter((each) => each !== kind.pieces[0])
}

/** Where a joint puts its b, when its a stands. */
export function motionBy(
  joint: Omit<Joint, 'id'>,
  standing: readonly StandingPiece[],
): RigidMap | null {
  const a = standing.find(
    ({ partId, piece }) => partId === joint.a.partId && piece === joint.a.piece,
  )
  return a === undefined ? null : after(a.motion, jointMotion(joint))
}
