import { dimensions } from '../../mechanism/dimensions.ts'
import { allStrips } from '../../mechanism/indices.ts'
import { hatch } from '../shared/definitions.ts'
import { drawGroup, drawShape, type Group } from '../shared/svg.ts'
import { along, bodyLength, stripDepth } from './layout.ts'
import { type Box, edge, endOf, frontOf, topOf } from './projection.ts'
import type { PlaceView } from './view.ts'

/** Draws the seen faces of a box; one of them may be cut, and is hatched. */
export const drawBox = (
  parent: Group,
  view: PlaceView,
  name: string,
  box: Box,
  cut: 'top' | 'front' | 'end' | null = null,
): void => {
  const group = drawGroup(parent, `box ${name}`)
  for (const [side, faceOf] of [
    ['top', topOf],
    ['front', frontOf],
    ['end', endOf],
  ] as const) {
    drawShape(group, 'path', `${side}-face`, {
      d: faceOf(view.layout, box),
      ...(side === cut ? { fill: hatch(view.prefix, 'cut') } : {}),
    })
  }
}

/** The bed's body. The strips lie on it behind the needles. */
export const drawBody = (root: Group, view: PlaceView): void => {
  const { layout } = view
  drawBox(root, view, 'body', {
    from: [0, 0, -layout.body],
    to: [bodyLength(layout), layout.back, 0],
  })
}

/** The deck over the strips, left of the cut with its cut face, or right of it. */
export const drawDeck = (root: Group, view: PlaceView, side: 'left' | 'right'): void => {
  const { layout } = view
  const [first, last] = layout.cut
  const [from, to] = side === 'left' ? [0, along(layout, first)] : [along(layout, last), bodyLength(layout)]
  drawBox(
    root,
    view,
    `deck-${side}`,
    { from: [from, layout.deck, 0], to: [to, layout.back, layout.deckHigh] },
    side === 'left' ? 'end' : null,
  )
}

/** Thin lines on the bed: its rails, the strips that run on hidden under the deck, and the turn marks. */
export const drawBedLines = (root: Group, view: PlaceView): void => {
  const { layout } = view
  const { bed } = view.frame.condition
  const right = bodyLength(layout)
  const [first, last] = layout.cut
  drawShape(root, 'path', 'rails', {
    d: [layout.butt * 0.2, layout.tail].map((y) => edge(layout, [0, y, 0], [right, y, 0])).join(''),
  })
  drawShape(root, 'path', 'hidden-strips', {
    d: allStrips
      .flatMap((strip) => {
        const [y, z] = [stripDepth(layout, strip), layout.deckHigh]
        return [
          edge(layout, [0, y, z], [along(layout, first), y, z]),
          edge(layout, [along(layout, last), y, z], [right, y, z]),
        ]
      })
      .join(''),
  })
  const marks = [bed.first - dimensions.turnMark, bed.last + dimensions.turnMark]
  drawShape(root, 'path', 'turn-flags', {
    d: marks
      .map((index) => {
        const x = along(layout, index)
        const wide = layout.deckHigh * 0.7
        return `${edge(layout, [x - wide, 0, -layout.body], [x + wide, 0, -layout.body], [x, 0, -layout.body * 0.35])}Z`
      })
      .join(''),
  })
}
