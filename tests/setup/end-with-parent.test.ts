import { type ChildProcess, spawn } from 'node:child_process'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterEach, describe, expect, test } from 'vitest'
import { askPs, lookInProc } from '@/setup/end-with-parent.mjs'
import { root } from '@/setup/paths.mjs'

const watch = pathToFileURL(join(root, 'src', 'setup', 'end-with-parent.mjs')).href

/** A server as the scripts start one: it says which process it is, and goes on until something ends it. */
const server = (looks: string) => `
  import * as watch from ${JSON.stringify(watch)}
  watch.endWithNpm(${looks})
  console.log(process.pid)
  setInterval(() => {}, 1000)`

/** Stands for npm: runs a script as npm does, and waits. */
const npm = (script: string) => `
  import { spawn } from 'node:child_process'
  spawn(${script}, { shell: true, stdio: 'inherit' })
  setInterval(() => {}, 1000)`

const lives = (pid: number): boolean => {
  try {
    return process.kill(pid, 0)
  } catch {
    return false
  }
}

const started: ChildProcess[] = []
const servers: number[] = []
afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL')
  for (const pid of servers.splice(0)) if (lives(pid)) process.kill(pid, 'SIGKILL')
})

/** Starts “npm” and, below it, a server; gives both once the server runs. */
const start = async (looks: string, after: string): Promise<{ npm: ChildProcess; server: number }> => {
  const run = '`"${process.execPath}" --input-type=module --eval "$SERVER"' + after + '`'
  const child = spawn(process.execPath, ['--input-type=module', '--eval', npm(run)], {
    env: { ...process.env, SERVER: server(looks), npm_lifecycle_event: 'start', SERVER_PARENT: '' },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  started.push(child)
  const pid = await new Promise<number>((done, fail) => {
    child.stdout.once('data', (text: Buffer) => done(Number(text.toString())))
    child.once('error', fail)
  })
  servers.push(pid)
  return { npm: child, server: pid }
}

describe.skipIf(process.platform === 'win32')('a server ends soon after npm was killed', () => {
  for (const [ways, looks] of [
    ['asked of the system in any way', ''],
    ['asked of ps alone', '[watch.askPs]'],
    ['where /proc is missing', '[() => { throw new Error("no /proc") }, watch.askPs]'],
  ] as const)
    for (const [between, after] of [
      ['with a shell that stays between', '; exit $?'],
      ['with a shell that makes room', ''],
    ] as const)
      test(`${between}, ${ways}`, { timeout: 60_000 }, async () => {
        const { npm: killed, server: pid } = await start(looks, after)
        killed.kill('SIGKILL')
        await expect.poll(() => lives(pid), { timeout: 20_000 }).toBe(false)
      })

  test('and not before', { timeout: 60_000 }, async () => {
    const { server: pid } = await start('', '; exit $?')
    // More than twice as long as a process on a watch takes to look.
    await new Promise((done) => setTimeout(done, 1500))
    expect(lives(pid)).toBe(true)
  })
})

describe.runIf(process.platform === 'linux')('what is above a process', () => {
  test('is the same in /proc and by ps', () => {
    const found = lookInProc(process.pid)
    expect(found?.parent).toBe(process.ppid)
    expect(askPs(process.pid)?.parent).toBe(process.ppid)
  })
})
