import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { ensureRoom, fileTrouble } from '@/setup/file-trouble.mjs'

const folder = mkdtempSync(join(tmpdir(), 'room-'))
afterAll(() => rmSync(folder, { recursive: true }))

const errorOf = (code: string, path?: string): Error => Object.assign(new Error(code), { code, path })

describe('what could not be written', () => {
  test.each([
    ['ENOSPC', 'the disk is full'],
    ['EDQUOT', 'the disk is full'],
    ['EACCES', 'its permissions do not allow it'],
    ['EPERM', 'its permissions do not allow it'],
    ['EROFS', 'the disk can only be read'],
    ['ENOTDIR', 'something else has its name'],
    ['EISDIR', 'it is a folder'],
  ])('for %s is said in a sentence', (code, reason) => {
    expect(fileTrouble(errorOf(code, '/a/b.zip'))).toBe(`“/a/b.zip” could not be written: ${reason}.`)
    expect(fileTrouble(errorOf(code), 'The output')).toBe(`The output could not be written: ${reason}.`)
  })

  test.each([errorOf('ECONNRESET'), errorOf('constructor'), new TypeError('x'), null, undefined, 'ENOSPC'])(
    'is nothing to say of any other error: %s',
    (error) => {
      expect(fileTrouble(error)).toBeNull()
    },
  )
})

describe('the folder of a build', () => {
  test('is made where there is room', () => {
    expect(() => ensureRoom(join(folder, 'a', 'b'))).not.toThrow()
  })

  test('is refused in a sentence where it can’t be made', () => {
    const file = join(folder, 'file')
    writeFileSync(file, '')
    expect(() => ensureRoom(file)).toThrow(`“${file}” could not be written: something else has its name.`)
    expect(() => ensureRoom(join(file, 'within'))).toThrow(
      'could not be written: something else has its name.',
    )
  })

  test('is refused in a sentence where the disk has no room for it', () => {
    expect(() => ensureRoom(folder, 2 ** 60)).toThrow(
      /^The disk is too full to build the site: “.+” has \d+ MB left, and it takes 1099511627776 MB\.$/,
    )
  })
})
