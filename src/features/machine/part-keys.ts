import { type PartHit, partRows } from '../../drawings/chain/part-at.ts'
import { required } from '../../browser/dom.ts'
import { createSpeech } from './caption.ts'
import type { FigureView } from './figure-view.ts'
import type { PartTip } from './part-tip.ts'

type Part = PartHit['part']

/** Where a key leads from a part; undefined for other keys, and where there is nothing that way. `null` is before the first key. */
const partAfter = (key: string, rows: readonly (readonly Part[])[], here: Part | null): Part | undefined => {
  const row = Math.max(
    0,
    rows.findIndex((some) => here !== null && some.includes(here)),
  )
  const line = rows[row] ?? []
  const place = here === null ? -1 : line.indexOf(here)
  // Rows are of different lengths: one goes to the part at the same share of the next.
  const share = line.length > 1 ? Math.max(0, place) / (line.length - 1) : 0.5
  const inRow = (by: number): Part | undefined => {
    const next = rows[Math.max(0, Math.min(rows.length - 1, row + by))] ?? []
    return next[Math.round(share * (next.length - 1))]
  }
  switch (key) {
    case 'ArrowRight':
      return line[Math.min(line.length - 1, place + 1)]
    case 'ArrowLeft':
      return line[Math.max(0, place - 1)]
    case 'ArrowDown':
      return here === null ? line[0] : inRow(1)
    case 'ArrowUp':
      return inRow(-1)
    case 'Home':
      return line[0]
    case 'End':
      return line.at(-1)
    default:
      return undefined
  }
}

/** Arrow keys go from part to part along the chain, and say each; Enter and Space pick the one that is shown. */
export const walkPartsByKeys = (view: FigureView, tip: PartTip, pick: (part: Part) => void): void => {
  const parts = required(view.root, '.parts', HTMLElement)
  const speak = createSpeech(view.root)
  let last: Part | null = null
  parts.addEventListener('keydown', (event) => {
    if (event.key === 'Enter' || event.key === ' ') {
      const shown = tip.shown()
      if (shown) pick(shown.part)
    } else {
      const rows = partRows(view.layout(), view.from(), view.whole())
      const part = partAfter(event.key, rows, tip.shown()?.part ?? last)
      if (part === undefined) return
      last = part
      tip.show(part, true)
      speak(tip.words())
    }
    event.preventDefault()
  })
  parts.addEventListener('blur', tip.hide)
}
