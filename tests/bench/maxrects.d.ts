/** What is used of the packer of rectangles, whose own types Node's resolution does not find. */
declare module 'maxrects-packer/dist/maxrects-packer.mjs' {
  export class Rectangle {
    readonly width: number
    readonly height: number
    constructor(width: number, height: number)
  }
  export class MaxRectsPacker {
    readonly bins: readonly unknown[]
    constructor(width: number, height: number, padding: number, options: Record<string, boolean>)
    addArray(rectangles: readonly Rectangle[]): void
  }
}
