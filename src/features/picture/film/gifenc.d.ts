/** What the site uses of gifenc, which brings no types. */
declare module 'gifenc' {
  /** Colours, each red, green and blue, 0 to 255. */
  type Palette = number[][]

  interface Frame {
    /** Needed with the first picture; the others have its colours unless they bring their own. */
    palette?: Palette
    /** How long it is shown, in ms. */
    delay: number
    transparent?: boolean
    transparentIndex?: number
    /** 1: what was there stays. */
    dispose?: number
  }

  interface Encoder {
    writeFrame(index: Uint8Array, width: number, height: number, frame: Frame): void
    finish(): void
    bytesView(): Uint8Array<ArrayBuffer>
  }

  export function GIFEncoder(): Encoder
  export function quantize(rgba: Uint8ClampedArray, most: number): Palette
  export function applyPalette(rgba: Uint8ClampedArray, palette: Palette): Uint8Array
}
