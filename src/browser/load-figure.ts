import type { Figure } from '../drawings/shared/figure-contract.ts'

const modules = import.meta.glob<{ figure: Figure }>('../drawings/*/figure.ts')

/** Fetches a figure; each comes in a file of its own, so that a page loads one only when it shows it. */
export const loadFigure = async (id: string): Promise<Figure> => {
  const module = await modules[`../drawings/${id}/figure.ts`]?.()
  if (!module) throw new Error(`there is no figure ${id}`)
  return module.figure
}
