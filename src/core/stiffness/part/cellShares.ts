import type { PartCells } from './types.ts'

/** What of one cell is walls and skins, what is infill room, and whose. */
export interface CellShare {
  solid: number
  room: number
  /** 0 outside all zones. */
  zone: number
}

/** As near to nothing or all as this, a share is. Rows of the scan are off by as much at a wall. */
const NEARLY = 0.06

/** Reads one cell's shares into `into`; false where there is as good as nothing in it. */
export function readShare(cells: PartCells, cell: number, into: CellShare): boolean {
  let zone = 0
  let room = 0
  let most = 0
  cells.rooms.forEach((rooms, k) => {
    const share = rooms[cell]!
    room += share
    if (share > most) [most, zone] = [share, k]
  })
  let solid = cells.solid[cell]!
  if (solid + room < NEARLY) return false
  if (solid > 1 - NEARLY) [solid, room] = [1, 0]
  else if (solid < NEARLY && room > NEARLY) [solid, room] = [0, room + solid]
  if (solid + room > 1 - NEARLY) room = 1 - solid
  into.solid = solid
  into.room = room
  into.zone = zone
  return true
}
