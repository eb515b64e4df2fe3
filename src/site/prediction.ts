import { needleIndex } from '../mechanism/bed.ts'
import type { Frame } from '../mechanism/frame.ts'
import { ofNeedle } from '../mechanism/indices.ts'
import { capital } from '../words/parts.ts'
import { patternOf, patterns, type Pattern } from '../words/patterns.ts'

/** A prediction's choices, and which of them the model says. */
export interface Choices {
  readonly choices: readonly string[]
  readonly right: number
}

/** What a prediction asks about: its kind, and what the kind needs. */
export interface Asked {
  readonly of: 'needle' | 'pattern' | 'count' | 'row' | 'choice'
  readonly needle?: string
  readonly options?: readonly string[]
  readonly right?: number
}

/** Numbers near the right one, the right one among them, in order. */
const around = (right: number, least: number, candidates: readonly number[]): Choices => {
  const some = [...new Set([right, ...candidates])].filter((value) => value >= least).slice(0, 4)
  some.sort((a, b) => a - b)
  return { choices: some.map(String), right: some.indexOf(right) }
}

/** The choices of a prediction about a state. Throws where the question is not one that the model can answer. */
export const choicesOf = (asked: Asked, frame: Frame): Choices => {
  const { pass } = frame
  switch (asked.of) {
    case 'needle': {
      const index = needleIndex(asked.needle ?? '')
      if (index === null)
        throw new Error(`a prediction asks about “${asked.needle ?? ''}”, which is no needle`)
      const outcomes = ['selected', 'plain'] as const
      const right = outcomes.findIndex((outcome) => outcome === ofNeedle(pass.came, index))
      if (right < 0) throw new Error(`needle ${asked.needle ?? ''} does not move in this state`)
      return { choices: ['It comes forward: selected', 'It stays back: plain'], right }
    }
    case 'pattern': {
      const offered: Pattern[] = ['none', 'one', 'eighth', 'twentyFourth', 'all']
      const right = patternOf(pass)
      if (!offered.includes(right)) offered.push(right)
      return { choices: offered.map((name) => capital(patterns[name])), right: offered.indexOf(right) }
    }
    case 'count':
      return around(pass.departures.length, 0, [1, 8, 24, 25, 9, 200, 0])
    case 'row': {
      const row = pass.row
      if (row === null) throw new Error('a prediction asks for the row, and there is no card')
      return around(row, 1, [row - 1, row + 1, row + 2, row + 3])
    }
    case 'choice': {
      const { options = [], right = -1 } = asked
      if (options.length < 2 || right < 0 || right >= options.length)
        throw new Error('a prediction needs two options or more, and the number of the right one, from 0')
      return { choices: options, right }
    }
  }
}
