import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, type Group } from '../shared/svg.ts'
import { foot, needleX } from './layout.ts'
import { catchPath } from './strips.ts'
import { isBroken, type MendView } from './view.ts'

/** The line that leads from the fault in the fabric up to its needle, its catch and its strip; none where nothing is broken. */
export const drawTrail = (root: Group, view: MendView): void => {
  const { layout } = view
  const x = px(needleX(layout, layout.subject))
  const bottom = px(foot(layout))
  const [line, flag] = isBroken(view, layout.subject)
    ? [`${catchPath(view, layout.subject)}H${x}V${bottom + 6}`, `M${x},${bottom - 3}l6,11h-12Z`]
    : ['', '']
  const band = drawGroup(root, 'trail')
  for (const name of ['trail-edge', 'trail-line']) drawShape(band, 'path', name, { d: line })
  drawShape(band, 'path', 'trail-flag', { d: flag })
}
