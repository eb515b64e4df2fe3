import {
  type Brightness,
  brightnessOf,
  cardOfCells,
  cellAverages,
  usualRows,
  usualThreshold,
} from '../../link/card-picture.ts'
import { areGrid, sizeWithin } from '../../link/picture-corners.ts'
import { type Card, mostRows } from '../../mechanism/card.ts'
import { required } from '../../browser/dom.ts'
import type { Bench } from './card-bench.ts'
import { createCornerHandles } from './corner-handles.ts'
import { showPreview } from './preview.ts'

/** The longest side of a picture that is looked at, in pixels: far finer than 200 rows. */
const mostPixels = 1200

/** The largest picture that is unpacked, in pixels: a small file can hold one that fills the memory. */
const mostUnpacked = 50_000_000

/** Whether a picture could be opened. */
export type Opened = 'opened' | 'unreadable' | 'too large'

/** Waits for a picture's size, without unpacking it. Throws where the browser can't read it as one. */
const arrived = (picture: HTMLImageElement): Promise<void> =>
  new Promise((done, fail) => {
    picture.onload = () => {
      done()
    }
    picture.onerror = () => {
      fail(new Error('no picture'))
    }
  })

/** The picture in a file, drawn on the canvas, or why not. */
const drawPicture = async (
  file: File,
  canvas: HTMLCanvasElement,
): Promise<Brightness | Exclude<Opened, 'opened'>> => {
  const picture = new Image()
  const address = URL.createObjectURL(file)
  try {
    picture.src = address
    await arrived(picture)
    const [wide, high] = [picture.naturalWidth, picture.naturalHeight]
    if (wide * high > mostUnpacked) return 'too large'
    const pen = canvas.getContext('2d', { willReadFrequently: true })
    if (wide === 0 || high === 0 || !pen) return 'unreadable'
    const scale = Math.min(1, mostPixels / Math.max(wide, high))
    canvas.width = Math.max(1, Math.round(wide * scale))
    canvas.height = Math.max(1, Math.round(high * scale))
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height)
    const { width, height, data } = pen.getImageData(0, 0, canvas.width, canvas.height)
    return brightnessOf(width, height, data)
  } catch {
    return 'unreadable'
  } finally {
    URL.revokeObjectURL(address)
  }
}

/** The dialog that makes a card from a picture. Returns what opens it on a file and says whether that worked. */
export const createPictureDialog = (editor: HTMLElement, bench: Bench): ((file: File) => Promise<Opened>) => {
  const dialog = required(editor, '.own-picture', HTMLDialogElement)
  const canvas = required(dialog, 'canvas', HTMLCanvasElement)
  const count = required(dialog, '.own-picture-rows', HTMLInputElement)
  const threshold = required(dialog, '.own-threshold', HTMLInputElement)
  const readout = required(dialog, '.own-threshold-readout', HTMLElement)
  const dark = required(dialog, '.own-dark', HTMLInputElement)
  const bottom = required(dialog, '.own-bottom', HTMLInputElement)
  const words = required(dialog, '.own-count', HTMLElement)
  const preview = required(dialog, '.own-preview', SVGSVGElement)
  const use = required(dialog, '.own-use', HTMLButtonElement)
  /** Whether the reader has set the rows or the threshold; until then they follow the corners. */
  let isSet = { rows: false, threshold: false }
  let brightness: Brightness | null = null
  let cells: readonly (readonly number[])[] = []
  let card: Card = []

  const show = (): void => {
    readout.textContent = threshold.value
    card = cardOfCells(cells, {
      threshold: Number(threshold.value),
      holes: dark.checked ? 'dark' : 'light',
      isRow1AtBottom: bottom.checked,
    })
    showPreview(preview, card)
    use.disabled = card.length === 0
    const holes = card.reduce((sum, row) => sum + row.toString(2).replaceAll('0', '').length, 0)
    if (card.length > 0)
      words.textContent = `This gives ${card.length === 1 ? '1 row' : `${card.length} rows`} with ${holes} holes.`
    else
      words.textContent = areGrid(handles.corners())
        ? `A card has 1 to ${mostRows} rows: write a whole number.`
        : 'The corners are out of order, so there is no grid between them. Put each where its own corner of the pattern is.'
  }
  const divide = (): void => {
    const corners = handles.corners()
    const isGrid = areGrid(corners)
    const { width, height } = sizeWithin(corners)
    if (isGrid && !isSet.rows) count.value = String(usualRows(width, height))
    const rows = Number(count.value)
    const isCount = Number.isInteger(rows) && rows >= 1 && rows <= mostRows
    cells = brightness && isGrid && isCount ? cellAverages(brightness, rows, corners) : []
    if (cells.length > 0 && !isSet.threshold) threshold.value = String(usualThreshold(cells))
    handles.drawGrid(isCount ? rows : 0)
    show()
  }
  const handles = createCornerHandles(required(dialog, '.own-photo', HTMLElement), divide)
  required(dialog, '.own-whole', HTMLButtonElement).addEventListener('click', () => {
    handles.reset(canvas.width, canvas.height)
    divide()
  })
  count.addEventListener('input', () => {
    isSet.rows = true
    divide()
  })
  threshold.addEventListener('input', () => {
    isSet.threshold = true
  })
  for (const input of dialog.querySelectorAll(
    'input[type="range"], input[type="radio"], input[type="checkbox"]',
  ))
    input.addEventListener('input', show)
  use.addEventListener('click', () => {
    dialog.close()
    bench.use(
      card,
      `The card from the picture, ${card.length === 1 ? '1 row' : `${card.length} rows`}, is in the reader.`,
    )
  })
  return async (file) => {
    const drawn = await drawPicture(file, canvas)
    if (typeof drawn === 'string') return drawn
    brightness = drawn
    isSet = { rows: false, threshold: false }
    handles.reset(brightness.width, brightness.height)
    divide()
    dialog.showModal()
    return 'opened'
  }
}
