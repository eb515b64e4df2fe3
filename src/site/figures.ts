import type { Figure } from '../drawings/shared/figure-contract.ts'
import type { KeyStage } from '../drawings/key/key.ts'

const modules = import.meta.glob<{ figure: Figure }>('../drawings/*/figure.ts', { eager: true })

/** Every figure of the site by its id; each folder of drawings with a `figure.ts` has one. */
export const figures: ReadonlyMap<string, Figure> = new Map(
  Object.values(modules).map(({ figure }) => [figure.id, figure] as const),
)

/** The figure of this id. Throws where there is none: ids stand in our own pages. */
export const figureOf = (id: string): Figure => {
  const figure = figures.get(id)
  if (!figure) throw new Error(`there is no figure “${id}”; there are ${[...figures.keys()].join(', ')}`)
  return figure
}

/** The place in the whole machine that a figure is a detail of; figures of the whole have none. */
export const keyStages: Readonly<Record<string, KeyStage>> = {
  card: 'card',
  pins: 'pin',
  timing: 'strip',
  strip: 'strip',
  hold: 'hold',
  gates: 'gate',
  fabric: 'needle',
  'hand-strip': 'strip',
  'hand-pin': 'pin',
  'hand-bar': 'needle',
}
