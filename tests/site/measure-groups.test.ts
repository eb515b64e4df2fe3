import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { measurementNames } from '@/mechanism/measurement.ts'
import { measureGroups } from '@/site/measure-groups.ts'

const folder = fileURLToPath(new URL('../../content/measurements/', import.meta.url))
const texts = readdirSync(folder).map((file) => readFileSync(`${folder}${file}`, 'utf8'))

test('every measurement is in one group, and one text says how it is taken', () => {
  expect(measureGroups.flatMap(({ names }) => names).toSorted()).toEqual(measurementNames.toSorted())
  expect(texts.map((text) => /^name: (.*)$/m.exec(text)?.[1]).toSorted()).toEqual(measurementNames.toSorted())
})

test('where the carriage moves, springs may fly or the reader is open, a caution comes first', () => {
  const before = (name: string) =>
    measureGroups.find(({ names }) => (names as readonly string[]).includes(name))!.cautions
  expect(before('slack')).toContain('fingers')
  expect(before('reach')).toContain('springs')
  expect(before('pinHigh')).toContain('reader')
})

test('no text has a millimetre of the training machine in it: somebody would set a machine to it', () => {
  for (const text of texts) expect(text).not.toMatch(/\d[\d.]*\s*(mm|ms)\b/)
})
