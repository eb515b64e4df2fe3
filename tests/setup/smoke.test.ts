import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

test.each(['firefox.ts#openFirefox', 'webkit.ts#openWebKit'])(
  'what opens a browser for the smoke tests is read by Node alone, as the set-up reads it: %s',
  (opener) => {
    const [file, start] = opener.split('#') as [string, string]
    const script = `console.log(typeof (await import('./tests/smoke/${file}')).${start})`
    const said = execFileSync(process.execPath, ['--input-type=module', '--eval', script], { cwd: root })
    expect(said.toString().trim()).toBe('function')
  },
)
