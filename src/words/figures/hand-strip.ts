import { needleName, needlesOfStrip } from '../../mechanism/bed.ts'
import { atOnce, stripFelt } from '../../mechanism/by-hand.ts'
import type { Condition } from '../../mechanism/condition.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { heldHeight } from '../../mechanism/gate.ts'
import { allStrips, type Needle, type Strip, markOfNeedle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { millimetres, withUnit } from '../lists.ts'
import { stripShown } from './strip.ts'

/** The needle whose butt is pressed: that of the strip shown which is nearest to the carriage, of those in use. */
export const needlePressed = (frame: Frame, strip: Strip): Needle | null => {
  const { first, last } = frame.condition.bed
  return needlesOfStrip(strip, frame.condition, frame.condition.dimensions.needles)
    .filter((needle) => needle >= first && needle <= last)
    .reduce<Needle | null>(
      (best, needle) =>
        best === null || Math.abs(needle - frame.x) < Math.abs(best - frame.x) ? needle : best,
      null,
    )
}

/** Whether what a hand feels of a strip is as it should be. */
export const isStripSound = (condition: Condition, strip: Strip): boolean => {
  const { pushed, backIn } = stripFelt(condition, strip)
  return pushed > 0 && backIn < atOnce
}

/** What a hand feels of a strip, in a few words. */
export const stripFeltWords = (condition: Condition, strip: Strip): string => {
  const { before, pushed, backIn } = stripFelt(condition, strip)
  if (pushed === 0) return 'does not move'
  if (before > 0) return 'stays over'
  return backIn < atOnce
    ? 'springs back at once'
    : `creeps back: ${withUnit((backIn / 1000).toFixed(1), 's')}`
}

/** The three things done to one butt while a hand holds its strip over. */
export const acts = ['press', 'letGo', 'back'] as const
export type Act = (typeof acts)[number]

/** Why a strip held over by hand does not keep a needle's butt down; null where it does. */
export const notKept = (condition: Condition, strip: Strip, needle: Needle): string | null => {
  if (markOfNeedle(condition.needleGone, needle)) return 'no butt'
  if (markOfNeedle(condition.catchBroken, needle)) return 'catch broken'
  if (markOfNeedle(condition.needleBent, needle)) return 'butt bent away'
  return stripFelt(condition, strip).pushed >= condition.reach ? null : 'the strip stays back'
}

/** An act in short lines: what one does, and what follows. */
export const actWords = (
  condition: Condition,
  strip: Strip,
  needle: Needle,
  act: Act,
): readonly [string, string] => {
  const never = notKept(condition, strip, needle)
  if (act === 'press')
    return [
      'Press the butt down',
      markOfNeedle(condition.needleGone, needle) ? 'there is none' : 'while the strip is held',
    ]
  if (act === 'letGo')
    return never === null
      ? ['Finger off: it stays', `${millimetres(-heldHeight(condition, needle))} down`]
      : ['Finger off: it comes up', never]
  if (stripFelt(condition, strip).backIn === Infinity)
    return ['Strip let go: it stays', 'the strip stays over']
  return never === null
    ? ['Strip let go: it comes up', 'so the catch held it']
    : ['Strip let go', 'nothing was held']
}

/** What the picture is of. */
const overview =
  'By hand, with the plug out and the one cover off that lies over the strips’ ends. From above: the ends of the eight strips come out of the bed at the left. A fingertip pushes one of them to the right, along the bed, and lets go.'

/** The strips that do not feel as they should, each with what it does. */
const oddStrips = (condition: Condition): string => {
  const odd = allStrips.filter((strip) => !isStripSound(condition, strip))
  if (odd.length === 0) return 'All eight feel the same, and spring back at once.'
  return odd.map((strip) => `Strip ${strip} ${stripFeltWords(condition, strip)}.`).join(' ')
}

/** The figure of a strip felt by hand, in words. */
export const describeHandStrip = (run: Run, frame: Frame): string => {
  const strip = stripShown(run, frame)
  const { condition } = frame
  const needle = needlePressed(frame, strip)
  const pressed =
    needle === null
      ? ''
      : ` Below, from the front: strip ${strip} is held over and the butt of ${needleName(needle)} is pressed down. ${acts
          .map((act) => `${actWords(condition, strip, needle, act).join(', ')}.`)
          .join(' ')}`
  return `${overview} Here the finger is at strip ${strip}. ${oddStrips(condition)}${pressed}`
}
