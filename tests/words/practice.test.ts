import { expect, test } from 'vitest'
import { levels } from '@/find/deal-machine.ts'
import { finderWords, judgedWords, levelNames, taskWords } from '@/words/practice.ts'
import { faultOf } from '@/mechanism/read-fault.ts'

const [strip, pin, needle] = (['strip.3.seized', 'pin.5.low', 'needle.R3.bent'] as const).map(faultOf)

test('each level of practice has a name and a task', () => {
  expect(new Set(levels.map((level) => levelNames[level])).size).toBe(levels.length)
  expect(new Set(levels.map(taskWords)).size).toBe(levels.length)
  for (const level of levels) expect(taskWords(level)).toMatch(/\.$/)
})

test('the verdict says what is right, what is not, what was missed and what could hardly be seen', () => {
  expect(judgedWords({ right: [strip!], wrong: [pin!], missed: [needle!], hidden: [] })).toMatch(
    /^Right: strip 3 seized\. Not so: .*pin 5.*\. You did not name what shows in your passes: .*R3.*\.$/,
  )
  expect(judgedWords({ right: [], wrong: [pin!], missed: [], hidden: [strip!] })).toBe(
    'None of what you named is so. Your passes hardly show: strip 3 seized.',
  )
})

test('the page’s own course is set beside it', () => {
  expect(finderWords(5, 3, '4 passes, about 3 minutes', 4)).toBe(
    'After your passes the page itself names 3 of 5 places that are wrong. By its own advice it makes 4 passes, about 3 minutes, and names 4.',
  )
})
