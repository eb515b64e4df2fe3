import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { freePort } from '../../src/setup/serve.mjs'
import { asText, type Browser, size } from './browser.ts'
import { ended, openScreen } from './screen.ts'
import { type Command, commandsTo, keyActions, pointerActions } from './webdriver.ts'

const ready = async (command: Command): Promise<void> => {
  for (let tries = 0; tries < 100; tries += 1) {
    if (await command('GET', '/status').then(Boolean, () => false)) return
    await wait(100)
  }
  throw new Error('WebKit’s driver does not answer')
}

/** A folder of settings that make GTK animate nothing; so pages are asked for reduced motion. */
const calmSettings = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'webkit-'))
  mkdirSync(join(folder, 'gtk-3.0'))
  writeFileSync(join(folder, 'gtk-3.0', 'settings.ini'), '[Settings]\ngtk-enable-animations=0\n')
  return folder
}

/**
 * Opens WebKitGTK's own small browser on a screen in memory.
 * @param driver path of WebKitWebDriver
 */
export const openWebKit = async (driver: string): Promise<Browser> => {
  const screen = await openScreen()
  const settings = calmSettings()
  const port = await freePort(4444)
  const server = spawn(driver, ['--host=127.0.0.1', `--port=${port}`], {
    stdio: 'ignore',
    env: { ...process.env, DISPLAY: screen.display, XDG_CONFIG_HOME: settings },
  })
  const command = commandsTo(`http://127.0.0.1:${port}`)

  let session = ''
  const close = async (): Promise<void> => {
    if (session !== '') await command('DELETE', session)
    session = ''
  }
  const end = async (): Promise<void> => {
    await close().catch(() => undefined)
    await ended(server)
    await screen.end()
    rmSync(settings, { recursive: true, force: true })
  }
  const act = (action: object): Promise<unknown> =>
    command('POST', `${session}/actions`, { actions: [action] })

  try {
    await ready(command)
  } catch (error) {
    await end()
    throw error
  }
  return {
    open: async (address) => {
      await close()
      const made = await command('POST', '/session', { capabilities: { alwaysMatch: {} } })
      session = `/session/${(made as { sessionId: string }).sessionId}`
      await command('POST', `${session}/window/rect`, size)
      await command('POST', `${session}/url`, { url: address })
    },
    press: async (...points) => {
      await act(pointerActions(points))
    },
    key: async (key, held) => {
      await act(keyActions(key, held))
    },
    look: async <Given extends string[], Seen>(
      question: (...given: Given) => Seen,
      ...given: Given
    ): Promise<Awaited<Seen>> => {
      const script = `return ${asText(question, given)}`
      return (await command('POST', `${session}/execute/sync`, { script, args: [] })) as Awaited<Seen>
    },
    end,
  }
}
