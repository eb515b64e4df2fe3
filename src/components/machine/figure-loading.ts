import type { Figure } from '../../drawings/figure.ts'

const modules = import.meta.glob<Record<string, Figure>>(
  '../../drawings/{place,chain,card,pins,timing,strip,hold,gates,fabric,margins}.ts',
)

/** Fetches a figure; each comes in a file of its own, so that a page loads one only when it shows it. */
export const loadFigure = async (id: string): Promise<Figure> => {
  const module = await modules[`../../drawings/${id}.ts`]?.()
  const figure = module?.[id]
  if (!figure) throw new Error(`there is no figure ${id}`)
  return figure
}
