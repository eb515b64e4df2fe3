import { type Frame, sinceLetGo, isKept } from '../../mechanism/frame.ts'
import { type Needle, ofNeedle } from '../../mechanism/indices.ts'

/** How a needle is marked in every drawing: what it is on its way to, and whether that is what the card asked. */
export const needleMarks = [
  'out',
  'ahead',
  'set',
  'pressed',
  'plain',
  'selected',
  'missed',
  'extra',
  'unmoved',
] as const
export type NeedleMark = (typeof needleMarks)[number]

/** The mark of needle `index` with the carriage where the frame has it. */
export const needleMark = (frame: Frame, index: Needle): NeedleMark => {
  const { pass, before, condition } = frame
  if (index < condition.bed.first || index > condition.bed.last) return 'out'
  const since = sinceLetGo(frame.x, index, pass.way)
  if (since < 0) return before && ofNeedle(before.came, index) === 'selected' ? 'set' : 'ahead'
  const [came, asked] = [ofNeedle(pass.came, index), ofNeedle(pass.asked, index)]
  if (isKept(pass, index, since) && since < condition.dimensions.gateLag) return 'selected'
  if (since < condition.dimensions.gateLag) return 'pressed'
  if (came === 'unmoved') return 'unmoved'
  if (came === asked) return came === 'selected' ? 'selected' : 'plain'
  return came === 'selected' ? 'extra' : 'missed'
}
