import { describe, expect, test } from 'vitest'
import { mark, rightAnswer } from '@/lesson/marking.ts'
import type { Kind, Question } from '@/lesson/question.ts'
import { made } from './made.ts'

/** The first question of a maker that fits. */
const first = <K extends Kind>(
  maker: string,
  kind: K,
  fits: (question: Question<K>) => boolean,
): Question<K> => {
  for (let seed = 1; seed < 500; seed++) {
    const question = made(maker, seed)
    if (question.kind !== kind) continue
    const one = question as unknown as Question<K>
    if (fits(one)) return one
  }
  throw new Error(`no such question of ${maker}`)
}

describe('marking', () => {
  test('names the part that should have come between', () => {
    const question = first('1.chain', 'order', ({ steps }) => steps.some(({ id }) => id === 'rocker'))
    const order = rightAnswer(question)
    const place = order.indexOf('rocker')
    const { reason, show } = mark(question, order.filter((id) => id !== 'rocker').concat('rocker'))
    expect(reason).toMatch(/comes before it, because only the rocker joins a pin to its strip/)
    expect(reason).toContain(question.steps[place]?.label)
    expect(show).toMatch(/break=rocker\.\d+\.dead/)
  })

  test('knows 24 given for 8', () => {
    const question = first('9.apart', 'number', ({ prompt }) => prompt.startsWith('Strip'))
    expect(mark(question, 24).reason).toMatch(/what one column does/)
    expect(mark(question, 8).right).toBe(true)
  })

  test('knows 8 given for 24', () => {
    const question = first('9.apart', 'number', ({ prompt }) => prompt.startsWith('Rocker'))
    expect(mark(question, 8).reason).toMatch(/what a strip does/)
  })

  test('says on which side an unforeseen number lies, without giving the right one', () => {
    const question = first('5.lost', 'number', ({ prompt }) => prompt.startsWith('Strips 1'))
    expect(mark(question, 199).reason).toMatch(
      /^199 is too high: each strip serves every 8th needle of 200\.$/,
    )
  })

  test('takes 0.30 for 0.3', () => {
    const question = made('6.dip', 1) as Question<'number'>
    expect(mark(question, Number(question.value.toFixed(2))).right).toBe(true)
  })

  test('says why a needle was wrongly chosen, and lists every needle that differs', () => {
    const question = made('5.bad', 3) as Question<'needles'>
    const right = rightAnswer(question)
    const [one, other] = question.needles.filter((needle) => !needle.right)
    const marking = mark(question, [...right, one!.index, other!.index])
    expect(marking.reason).toBe(one?.reason)
    expect(marking.wrong).toEqual([one?.index, other?.index])
    expect(marking.show).toBe(one?.show)
  })

  test('knows a whole answer that comes of a mix-up', () => {
    const question = made('8.next', 1) as Question<'needles'>
    const [slip] = question.slips
    expect(mark(question, slip!.chosen)).toMatchObject({
      right: false,
      reason: slip?.reason,
      show: slip?.show,
    })
  })

  test('says from the model what a wrongly named part would have left', () => {
    const question = first(
      '5.part',
      'part',
      (one) => rightAnswer(one).endsWith('.seized') && one.options.some(({ id }) => id.endsWith('.dead')),
    )
    const rocker = question.options.find(({ id }) => id.endsWith('.dead'))
    expect(rocker?.reason).toMatch(/^“Rocker \d+ broken” would leave .* but here .* (is|are) missed\.$/)
  })

  test('takes an unknown option as wrong', () => {
    expect(mark(made('5.part', 1) as Question<'part'>, 'nothing').right).toBe(false)
  })
})
