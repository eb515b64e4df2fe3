import type { Figure } from '../../drawings/figure.ts'

const modules = import.meta.glob<Record<string, Figure>>(
  '../../drawings/{place,chain,card,pins,timing,strip,hold,gates,fabric,margins}.ts',
)

/** Fetches the figures of these ids; each comes in a file of its own, so that a page loads only what it shows. */
export const loadFigures = async (ids: readonly string[]): Promise<Map<string, Figure>> => {
  const loaded = await Promise.all(
    ids.map(async (id) => {
      const module = await modules[`../../drawings/${id}.ts`]?.()
      const figure = module?.[id]
      if (!figure) throw new Error(`there is no figure ${id}`)
      return [id, figure] as const
    }),
  )
  return new Map(loaded)
}
