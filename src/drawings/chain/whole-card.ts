import { hasHole } from '../../mechanism/card.ts'
import { allColumns } from '../../mechanism/indices.ts'
import { hasChanged } from '../shared/memo.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, type Group, write } from '../shared/svg.ts'
import type { ChainView } from './view.ts'

/** The whole card, small, beside the reader: its pattern, and which of its rows is over the pins. */
export const drawWholeCard = (root: Group, view: ChainView): void => {
  const { layout, frame } = view
  if (layout.shape !== 'wide') return
  const group = drawGroup(root, 'whole-card')
  const row = frame.pass.row ?? 1
  if (!hasChanged(group, [frame.condition.card, row, view.roll])) return
  const card = frame.condition.card ?? []
  write(group, () => ({ display: card.length > 0 ? 'inline' : 'none' }))
  const left = layout.reader + 24 * layout.pitch + 74
  const top = layout.cardTop
  const tall = Math.min(5, 150 / Math.max(1, card.length))
  const wide = 5
  drawShape(group, 'rect', 'paper', {
    x: left - 4,
    y: top,
    width: 24 * wide + 8,
    height: px(card.length * tall + 8),
  })
  const rowY = (row: number): number => top + 4 + (card.length - row) * tall
  drawShape(group, 'path', 'small-holes', {
    d: card
      .flatMap((row, n) =>
        allColumns
          .filter((column) => hasHole(row, column))
          .map((column) => `M${left + (column - 1) * wide},${px(rowY(n + 1) + tall / 2)}h${wide}`),
      )
      .join(''),
    'stroke-width': px(tall),
  })
  drawShape(group, 'path', 'row-pointer', {
    transform: `translate(0 ${px(rowY(row - view.roll) + tall / 2)})`,
    d: `M${left - 6},0l-7,-4v8ZM${left + 24 * wide + 6},0l7,-4v8Z`,
  })
  drawShape(group, 'text', 'row-name', { x: left - 17, y: px(rowY(row) + tall / 2 + 4), text: String(row) })
}
