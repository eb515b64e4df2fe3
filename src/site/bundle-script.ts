import { type OutputChunk, type Plugin, rolldown } from 'rolldown'

/** What a bundle may want beside its first file. */
interface BundleOptions {
  readonly plugins?: readonly Plugin[]
  /** Names in the code, each with the expression that is put in its place. */
  readonly define?: Readonly<Record<string, string>>
}

/**
 * A module and all that it imports, now or later, as one script without modules.
 * @param input its file, from the project's own folder
 */
export const bundleScript = async (
  input: string,
  { plugins = [], define = {} }: BundleOptions = {},
): Promise<OutputChunk> => {
  const bundle = await rolldown({ input, plugins: [...plugins], transform: { define: { ...define } } })
  const { output } = await bundle.generate({ format: 'iife', codeSplitting: false, minify: true })
  await bundle.close()
  return output[0]
}
