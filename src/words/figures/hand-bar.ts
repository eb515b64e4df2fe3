import type { Condition } from '../../mechanism/condition.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'

/** How the padding of a retainer bar is: as it should be, or tired. */
export const paddings = ['sound', 'tired'] as const
export type Padding = (typeof paddings)[number]

/** How the padding of this machine's bar is. */
export const paddingOf = ({ retainer }: Condition): Padding => (retainer > 0 ? 'tired' : 'sound')

/** What one sees and feels of a padding, in short lines. */
export const paddingWords: Readonly<Record<Padding, readonly [string, string]>> = {
  sound: ['Sound: thick and springy', 'it presses every needle down lightly'],
  tired: ['Tired: flat, hard or sticky', 'needles lie loose, or stick'],
}

/** The figure of the retainer bar drawn by hand, in words. */
export const describeHandBar = (_: Run, frame: Frame): string =>
  [
    'By hand, with nothing opened and no needle in work: the retainer bar lies across the needles, under the front of the bed’s cover, from end to end.',
    'From above: a hand draws it out along the bed, at the right end; on some machines it comes out at the other end.',
    'In section: its padding faces the needles, so it is seen only once the bar is out.',
    `${paddingWords.sound.join(', ')}. ${paddingWords.tired.join(', ')}.`,
    `On this machine the padding is ${paddingOf(frame.condition)}.`,
  ].join(' ')
