import type { AstroIntegration } from 'astro'
import { served } from '../site/licences.ts'

/** The package that a module is of; null for the site's own, what the build keeps in a folder beside packages included. */
export const packageOf = (id: string): string | null =>
  /.*\/node_modules\/((?:@[^/]+\/)?[^./][^/]*)\//.exec(id.replaceAll('\\', '/'))?.[1] ?? null

interface Chunk {
  readonly type: string
  readonly modules?: Readonly<Record<string, { readonly renderedLength: number } | undefined>>
}

/** Packages of which some of the bundles' text comes, and which no licence on the site names. */
export const unlicensed = (chunks: readonly Chunk[]): string[] => {
  const sent = chunks.flatMap(({ modules = {} }) =>
    Object.entries(modules).flatMap(([id, module]) =>
      (module?.renderedLength ?? 0) > 0 ? [packageOf(id) ?? ''] : [],
    ),
  )
  return [...new Set(sent)].filter((name) => name !== '' && !served.includes(name)).sort()
}

/** Throws where packages reach the browser of which the site's page of licences does not name. */
export const checkLicences = (chunks: readonly Chunk[]): void => {
  const names = unlicensed(chunks)
  if (names.length > 0)
    throw new Error(`These reach the browser, and src/site/licences.ts lacks them: ${names.join(', ')}`)
}

/** Stops the build where something is sent without its licence. */
export const licencesCheck = (): AstroIntegration => ({
  name: 'licences-check',
  hooks: {
    'astro:config:setup': ({ updateConfig }) => {
      const check = {
        name: 'licences-check',
        generateBundle(
          this: { environment?: { name: string } },
          _: unknown,
          bundle: Readonly<Record<string, Chunk>>,
        ) {
          if (this.environment?.name === 'client') checkLicences(Object.values(bundle))
        },
      }
      updateConfig({ vite: { plugins: [check] } })
    },
  },
})
