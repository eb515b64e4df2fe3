import { type Group, drawShape } from '../shared/svg.ts'

/** An unseen face, or an unseen wide line, by which a part of thin lines can be pressed. */
export const drawHit = (group: Group, path: string, kind: 'face' | 'line' = 'face'): void => {
  drawShape(group, 'path', `hit-${kind}`, { d: path })
}
