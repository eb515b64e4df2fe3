import { withUnit } from '../../words/lists.ts'
import type { Kit, NumberAsked, Picture } from '../question.ts'
import { type Setup, linkText } from '../setup.ts'

/** What a maker gives for a question for a number. */
export interface NumberQuestion {
  readonly prompt: string
  readonly setup: Setup
  readonly value: number
  readonly unit?: string
  readonly pictures?: readonly Picture[]
  /** Numbers of known mix-ups, and what is to be said to them. */
  readonly slips: readonly (readonly [number, string])[]
  readonly how: string
  readonly because: string
  readonly show?: Setup
}

const round = (value: number): number => Math.round(value * 100) / 100

/** A question for a number; slips that come to the right number, or to each other's, fall away. */
export const numberQuestion = (kit: Kit, asked: NumberQuestion): NumberAsked => {
  const show = linkText(kit, asked.show ?? asked.setup)
  const taken = new Set([round(asked.value)])
  const slips = asked.slips.flatMap(([value, reason]) => {
    if (taken.has(round(value))) return []
    taken.add(round(value))
    return [{ value: round(value), reason, show }]
  })
  return {
    kind: 'number',
    prompt: asked.prompt,
    state: linkText(kit, asked.setup),
    pictures: asked.pictures ?? [],
    value: round(asked.value),
    unit: asked.unit ?? '',
    slips,
    how: asked.how,
    right: {
      reason: `${asked.unit ? withUnit(round(asked.value), asked.unit) : round(asked.value)}: ${asked.because}`,
      show,
    },
  }
}
