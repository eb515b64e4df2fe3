import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** The lines of a folder's files that readers may see, each with its file. */
const linesIn = (folder: string): { name: string; line: string }[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(astro|ts|md|mdx)$/.test(name) && !name.endsWith('README.md'))
    .flatMap((name) =>
      readFileSync(join(root, folder, name), 'utf8')
        .split('\n')
        .filter((line) => !/^\s*(?:\/?\*|\/\/|import\b)/.test(line))
        .map((line) => ({ name: join(folder, name), line: line.trim() })),
    )

const texts = [
  'content',
  ...['words', 'lesson', 'site', 'features', 'pages', 'layouts'].map((room) => `src/${room}`),
].flatMap(linesIn)

/** Turns that nobody says, each with what is said instead. */
const unsaid: readonly [RegExp, string][] = [
  [/\bwas had\b/, 'how we know it'],
  [/\botherwise than (?:asked|the card asks)/, 'came out wrong'],
  [/\bspeaks? against\b/, 'don’t fit'],
  [/<\/strong> in hand/, 'chosen needle'],
  [/What came of it|\bwill come of\b/, 'what happened, what will happen to'],
  [/can[’']t tell (?:these|them) apart/, 'look the same'],
  [/\b[Ll]ook whether\b/, 'see whether'],
  [/\bown papers\b/, 'manual'],
  [/\bmade no more\b/, 'no longer made'],
  [/\byou seek\b/, 'you are looking for'],
  [/\bgive alike\b|\bfeel alike\b/, 'have the same play, feel the same'],
  [/\bfalls? home\b|\bcomes? home too\b/, 'springs back'],
  [/\bboth are so\b/, 'both are true'],
  [/\bin this moment\b/, 'at this moment'],
  [/\bminds? speed\b/, 'depends on speed'],
  [/\bdeceives?\b/, 'misleads'],
  [/\bNothing cannot\b/i, 'a hole cannot'],
  [/\bWho answers\b/, 'anyone who answers'],
  [/\ba talk first\b/, 'talk it over first'],
  [/\basks? for it or not\b/, 'whether or not the card asks for it'],
  // “Pass to the right” as an order: a pass is made, the carriage is pushed across.
  [
    /(?:^|["'`>.;:] ?|\band )[Pp]ass (?:once|slowly|fast|to the|with|both ways)\b/,
    'push the carriage across',
  ],
]

test.each(unsaid)('%s is said as people say it: %s', (words) => {
  expect(texts.filter(({ line }) => words.test(line)).map(({ name, line }) => `${name}: ${line}`)).toEqual([])
})

test('a needle that is not selected is missed; stitches are dropped, and pins drop at a turn', () => {
  const drops = /\bdrop(?:s|ped|ping)? (?:every|(?:a |one |its )?needles?)|needles? (?:is |are )?dropped/i
  expect(texts.filter(({ line }) => drops.test(line)).map(({ name, line }) => `${name}: ${line}`)).toEqual([])
})

test('a catch is called a catch: hooks are the needles’', () => {
  const hook = /\bhooks?\b/i
  const ofNeedles =
    /needles?|latch|sharp|hooks to the front|padded|over the hooks|of="hooks"|'hooks'|cautions|pawl|hook-or|one-hook|the hooks|hooked|hook\b.{0,30}yarn|hooks first|layout\.hook/i
  expect(
    texts
      .filter(({ line }) => hook.test(line) && !ofNeedles.test(line))
      .map(({ name, line }) => `${name}: ${line}`),
  ).toEqual([])
})
