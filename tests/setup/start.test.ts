import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { connect } from 'node:net'
import { networkInterfaces } from 'node:os'
import { afterEach, describe, expect, test } from 'vitest'
import { networkAddresses } from '@/setup/addresses.mjs'
import { root } from '@/setup/paths.mjs'

/** A start as npm’s, of a small site that takes a second to build and says how it was built. */
const script = `
  import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
  import { join } from 'node:path'
  import { endTogether } from './src/setup/child.mjs'
  import { start } from './src/setup/start.mjs'
  const [, name, ...args] = process.argv
  endTogether()
  process.exitCode = await start(process.execPath, args, async (node, folder, env) => {
    rmSync(folder, { recursive: true })
    await new Promise((done) => setTimeout(done, 1000))
    mkdirSync(folder)
    writeFileSync(join(folder, 'index.html'), JSON.stringify({ name, folder, network: env.NETWORK_SITE }))
    writeFileSync(join(folder, '404.html'), 'no such page')
    return 0
  }).catch((error) => (console.log(error.message), 1))`

interface Started {
  readonly child: ChildProcess
  /** What it has printed by now. */
  readonly said: () => string
}

const children: ChildProcess[] = []
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGTERM')
})

const started = (name: string, ...args: readonly string[]): Started => {
  const child = spawn(process.execPath, ['--input-type=module', '--eval', script, '--', name, ...args], {
    cwd: root,
    env: { ...process.env, PORT: '4530', BASE: '', SERVER_PARENT: '' },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  children.push(child)
  let text = ''
  child.stdout.setEncoding('utf8').on('data', (more: string) => (text += more))
  return { child, said: () => text }
}

/** Long enough for a busy machine. */
const patience = { timeout: 60_000 }

/** The address that a start prints once its site is served. */
const addressOf = async ({ said }: Started): Promise<string> => {
  const line = /^The site is at (\S+) \(Ctrl\+C ends it\)\.$/m
  await expect.poll(said, patience).toMatch(line)
  return line.exec(said())![1]!
}

interface Site {
  readonly name: string
  readonly folder: string
  readonly network?: string
}

const siteAt = async (address: string): Promise<Site> => (await fetch(address)).json() as Promise<Site>

const ended = (child: ChildProcess): Promise<void> =>
  new Promise((done) => {
    child.once('exit', () => done())
    child.kill('SIGTERM')
  })

const [onNetwork] = networkAddresses(networkInterfaces())

describe('npm start', { timeout: 180_000 }, () => {
  test('serves its site while another start builds and serves its own, to this machine only', async () => {
    const first = started('first')
    const address = await addressOf(first)
    const site = await siteAt(address)
    expect(site).toMatchObject({ name: 'first' })
    expect(site).not.toHaveProperty('network')
    expect(first.said()).toContain(
      'Only this machine can open it. npm start -- --host serves it to the network',
    )
    if (onNetwork !== undefined)
      await expect(fetch(address.replace('localhost', onNetwork))).rejects.toThrow()

    const second = started('second')
    while (!second.said().includes('The site is at')) {
      expect(await siteAt(address)).toEqual(site)
      await new Promise((done) => setTimeout(done, 50))
    }
    const other = await addressOf(second)
    expect(other).not.toBe(address)
    const { name, folder } = await siteAt(other)
    expect(name).toBe('second')
    const unknown = await fetch(`${other}no/such/page/`)
    expect([unknown.status, await unknown.text()]).toEqual([404, 'no such page'])

    await ended(first.child)
    expect([existsSync(site.folder), existsSync(folder)]).toEqual([false, true])
    expect(await siteAt(other)).toMatchObject({ name: 'second' })
  })

  test('serves its site, whoever asked for it before it was built', async () => {
    const early = started('early')
    const asking = setInterval(() => {
      connect(4530, '127.0.0.1').on('error', () => undefined)
    }, 50)
    const address = await addressOf(early).finally(() => {
      clearInterval(asking)
    })
    expect(await siteAt(address)).toMatchObject({ name: 'early' })
  })

  test.runIf(onNetwork !== undefined)('with --host serves it to the network, and says so', async () => {
    const opened = started('opened', '--host')
    const address = await addressOf(opened)
    expect(new URL(address).hostname).toBe(onNetwork)
    const { port } = new URL(address)
    expect(await siteAt(address)).toMatchObject({ name: 'opened', network: address })
    expect(await siteAt(`http://127.0.0.1:${port}/`)).toMatchObject({ name: 'opened' })
    await expect.poll(opened.said).toContain('Anybody on this network can open the site while it runs.\n')
    expect(opened.said()).toMatch(/^ {4}█▀▀▀▀▀█ .* █▀▀▀▀▀█ {4}$/m)
    expect(opened.said()).toContain(`links and codes made there lead to ${address}\n`)
  })

  test('refuses what it does not know', async () => {
    const { said } = started('strange', '--open')
    await expect
      .poll(said, patience)
      .toBe(
        'npm start does not know “--open”. It knows --host, and takes another port as PORT=8080 npm start.\n',
      )
  })
})
