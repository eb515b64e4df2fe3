import type { Figure } from '../drawings/figure.ts'
import type { KeyStage } from '../drawings/key.ts'

const modules = import.meta.glob<Record<string, Figure>>(
  '../drawings/{place,chain,card,pins,timing,strip,hold,gates,fabric,margins}.ts',
  { eager: true },
)

/** Every figure of the site by its id; each file in the drawings' folder exports one under that name. */
export const figures: ReadonlyMap<string, Figure> = new Map(
  Object.entries(modules).flatMap(([path, module]) => {
    const id = path.replace(/^.*\/(.*)\.ts$/, '$1')
    const figure = module[id]
    return figure ? [[id, figure] as const] : []
  }),
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
}
