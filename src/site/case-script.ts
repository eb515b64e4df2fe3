import { rolldown } from 'rolldown'

/** The script that stands in the page of a case and writes what is wrong before it is drawn, with all that it needs. */
export const wordsFirst = async (): Promise<string> => {
  const bundle = await rolldown({ input: 'src/features/case/before-first-paint.ts' })
  const { output } = await bundle.generate({ format: 'iife', minify: true })
  await bundle.close()
  const { code } = output[0]
  if (/<\/script/i.test(code)) throw new Error('The first words of a case would end their own script.')
  return code
}
