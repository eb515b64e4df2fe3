import { hasHole } from '../../mechanism/card.ts'
import { isStale } from '../shared/stale.ts'
import { change, changeText, type Group, part, px } from '../shared/svg.ts'
import { columnNumbers, type View } from './view.ts'

/** The whole card, small, beside the reader: its pattern, and which of its rows is over the pins. */
export const drawWholeCard = (root: Group, view: View): void => {
  const { layout, frame } = view
  if (layout.name !== 'wide') return
  const group = part(root, 'g', 'whole-card')
  const row = frame.pass.row ?? 1
  if (!isStale(group, [frame.condition.card, row, view.roll])) return
  const card = frame.condition.card ?? []
  change(group, 'display', () => (card.length > 0 ? 'inline' : 'none'))
  const left = layout.reader + 24 * layout.pitch + 74
  const top = layout.cardTop
  const tall = Math.min(5, 150 / Math.max(1, card.length))
  const wide = 5
  const paper = part(group, 'rect', 'paper')
  change(paper, 'x', () => left - 4)
  change(paper, 'y', () => top)
  change(paper, 'width', () => 24 * wide + 8)
  change(paper, 'height', () => px(card.length * tall + 8))
  const rowY = (row: number): number => top + 4 + (card.length - row) * tall
  const holes = part(group, 'path', 'small-holes')
  change(holes, 'd', () =>
    card
      .flatMap((row, n) =>
        columnNumbers
          .filter((column) => hasHole(row, column))
          .map((column) => `M${left + (column - 1) * wide},${px(rowY(n + 1) + tall / 2)}h${wide}`),
      )
      .join(''),
  )
  change(holes, 'stroke-width', () => px(tall))
  const pointer = part(group, 'path', 'row-pointer')
  change(pointer, 'transform', () => `translate(0 ${px(rowY(row - view.roll) + tall / 2)})`)
  change(pointer, 'd', () => `M${left - 6},0l-7,-4v8ZM${left + 24 * wide + 6},0l7,-4v8Z`)
  const name = part(group, 'text', 'row-name')
  change(name, 'x', () => left - 17)
  change(name, 'y', () => px(rowY(row) + tall / 2 + 4))
  changeText(name, () => String(row))
}
