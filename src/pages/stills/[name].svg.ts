import type { APIRoute, GetStaticPaths } from 'astro'
import { builtFigure, builtState } from '../../site/machine-state.ts'
import { letterStyles, roomRound } from '../../site/still-styles.ts'
import { stepTags, stillName } from '../../site/chapter-steps.ts'
import { allChapters } from '../../site/chapters.ts'
import { figureOf } from '../../site/figures.ts'
import { short, withStyles } from '../../site/minify-svg.ts'
import figureStyles from '../../drawings/shared/figure.css?raw'
import tokens from '../../styles/tokens.css?raw'

const styles = import.meta.glob<string>('../../drawings/**/*.css', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** A still picture for every step of every chapter, for readers without scripts. */
export const getStaticPaths: GetStaticPaths = async () => {
  const stills = new Map<string, { figure: string; state: string }>()
  for (const chapter of await allChapters())
    for (const { figure, state } of stepTags(chapter.body ?? ''))
      stills.set(stillName(figure, state), { figure, state })
  return [...stills].map(([name, props]) => ({ params: { name }, props }))
}

/** The narrow picture of a figure in a state, with its styles in it. */
export const GET: APIRoute<{ figure: string; state: string }> = ({ props }) => {
  const figure = figureOf(props.figure)
  const { run, frame } = builtState(props.state)
  const { height, ...narrow } = figure.sizes.narrow
  const { viewBox, width } = roomRound(narrow.width, height)
  const own = Object.entries(styles).filter(
    ([path]) => path.endsWith(`/${figure.id}/figure.css`) || path.endsWith('/detail.css'),
  )
  const all = [tokens, figureStyles, ...own.map(([, text]) => text), letterStyles]
  const css = all.join('\n').replaceAll(':root', 'svg')
  const drawing = short(builtFigure(figure, run, frame, { shape: 'narrow', prefix: 'still' }))
  return new Response(withStyles(`viewBox="${viewBox}" width="${width}" height="${height}"`, css, drawing), {
    headers: { 'Content-Type': 'image/svg+xml' },
  })
}
