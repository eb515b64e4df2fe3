import { at } from '../mechanism/lookup.ts'

/** Days after which a question comes back, by box: at once after a wrong answer, later and later after right ones. */
export const daysOfBox = [0, 1, 3, 7, 16, 35] as const

const lastBox = daysOfBox.length - 1
const longest = Math.max(...daysOfBox)

/** How a maker's questions have been answered. */
export interface Answered {
  /** How many were answered rightly and wrongly. */
  readonly right: number
  readonly wrong: number
  /** 0 to 5. */
  readonly box: number
  /** Day number from which one is due again. */
  readonly due: number
}

/** A maker of which nothing has been asked. */
export const unasked: Answered = { right: 0, wrong: 0, box: 0, due: 0 }

/** After one more answer on this day: a right one moves a box up, a wrong one back to the first. */
export const answeredOn = (before: Answered, right: boolean, day: number): Answered => {
  const box = right ? Math.min(lastBox, before.box + 1) : 0
  return {
    right: before.right + (right ? 1 : 0),
    wrong: before.wrong + (right ? 0 : 1),
    box,
    due: day + at(daysOfBox, box),
  }
}

/** Whether a question is due. A day further off than any box waits means that the clock was wrong once: due too. */
export const isDue = ({ due }: Answered, day: number): boolean => due <= day || due > day + longest
