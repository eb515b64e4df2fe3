import { expect, test } from 'vitest'
import { mutation } from '@/commands/mutation.ts'
import { listedIn, type Report, survivorsIn } from '@/commands/survivors.ts'
import { runHere } from './run-here.ts'

const source = "const isRow = (text: string) =>\n  text === 'a' ||\n  text === `b`\n"
const at = (line: number, from: number, to: number, lastLine = line) => ({
  start: { line, column: from },
  end: { line: lastLine, column: to },
})
const report: Report = {
  files: {
    'src/link/some.ts': {
      source,
      mutants: [
        { status: 'Survived', replacement: '""', location: at(2, 12, 15) },
        {
          status: 'NoCoverage',
          replacement: `text === 'a' && ${'text === `b` '.repeat(9)}`,
          location: at(2, 3, 15, 3),
        },
        { status: 'Killed', replacement: 'true', location: at(2, 3, 15) },
        { status: 'Timeout', replacement: 'true', location: at(3, 3, 15) },
      ],
    },
  },
}

test('changes that no test has found are given on one line, short, and safe in a table', () => {
  const long = `text === 'a' && ${'text === ´b´ '.repeat(9)}`.slice(0, 69)
  expect(survivorsIn(report)).toEqual([
    'some.ts | `\'a\'` | `""`',
    `some.ts | \`text === 'a' \\|\\| text === ´b´\` | \`${long}…\``,
  ])
})

test('changes are listed where their row has a reason', () => {
  const [one, other] = survivorsIn(report)
  const list = `# Title\n\n| file | is | changed to | why it lives |\n| --- | --- | --- | --- |\n| ${one!} | a reason |\n| ${other!} | |\n`
  expect(listedIn(list).has(one!)).toBe(true)
  expect(listedIn(list).has(other!)).toBe(false)
})

test('a room that is none is refused before anything is changed', async () => {
  expect(await runHere(mutation, ['link', 'attic', 'from-scratch', 'cellar'])).toEqual({
    code: 2,
    out: '',
    said: 'Name one of mechanism, link, find, not attic, cellar.\n',
  })
})
