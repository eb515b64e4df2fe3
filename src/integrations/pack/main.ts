// Packs a built site: FOLDER-OF-THE-SITE FOLDER-FOR-THE-ARCHIVE

import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileTrouble } from '../../setup/file-trouble.mjs'
import { pack } from './pack.ts'

const [site = '', out = ''] = process.argv.slice(2)
const project = readFileSync(new URL('../../../package.json', import.meta.url), 'utf8')
const { name, version } = JSON.parse(project) as { name: string; version: string }
const archive = await pack(site, version)
const file = join(out, `${name}-${version}.zip`)
try {
  mkdirSync(out, { recursive: true })
  writeFileSync(file, archive)
  process.stdout.write(`${file}: ${(archive.length / 1e6).toFixed(1)} MB\n`)
} catch (error) {
  const trouble = fileTrouble(error, `“${file}”`)
  if (trouble === null) throw error
  // A part of an archive is none.
  rmSync(file, { force: true })
  process.stderr.write(`${trouble}\n`)
  process.exitCode = 1
}
