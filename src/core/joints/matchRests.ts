import { mapAxes } from '../mesh/rigidMaps.ts'
import type { BodyKind } from '../model/aircraft.ts'
import { dot, times } from '../model/vectors.ts'
import type { Shape } from './shapeOf.ts'
import type { Candidate } from './types.ts'

/** Of a part's flat faces only the largest carry something. */
const MOST_FACES = 4
/** A face carries what is at most so many times as large. */
const LEAST_SHARE = 0.35
/** So much of the smaller of both has to be there below it: trays and pads have windows. */
const LEAST_CONTACT = 0.5

/** What meets: a printed part, or something bought with a body and whether holes hold it. */
export interface Bought {
  readonly kind: BodyKind
  readonly isBolted: boolean
}

/** Whether b can lie on a by strap, pad or tape: on what is printed, a propeller on a motor. */
export function canRest(a: Bought | null, b: Bought | null): boolean {
  if (b === null || b.isBolted) return false
  return b.kind === 'prop' ? a?.kind === 'motor' : a === null
}

/** A bought thing b on each of the large faces of a, middle on middle, along it and across. */
export function matchRests(a: Shape, b: Shape): readonly Candidate[] {
  const { min, max } = b.box
  const size = [max[0] - min[0], max[1] - min[1]] as const
  const under = size[0] * size[1]
  return a.faces
    .filter(({ areaMm2 }) => areaMm2 >= LEAST_SHARE * under)
    .slice(0, MOST_FACES)
    .flatMap(({ centreMm, normal, along, across, areaMm2 }) =>
      ([0, 1] as const).map((turned): Candidate => {
        const isSquare = Math.abs(size[0] - size[1]) < 0.01 * size[0]
        const [right, up] = turned === 0 || isSquare ? [along, across] : [across, times(along, -1)]
        return {
          kind: 'faces',
          pairs: [],
          motion: mapAxes(
            [
              [1, 0, 0],
              [0, 1, 0],
              [0, 0, 1],
            ],
            [right, up, normal],
            [0, 0, 0],
            centreMm,
          ),
          direction: normal,
          planeMm: dot(centreMm, normal),
          offMm: 0,
          areaMm2: LEAST_CONTACT * Math.min(areaMm2, under),
          isDrawn: false,
          isRest: true,
        }
      }),
    )
}
