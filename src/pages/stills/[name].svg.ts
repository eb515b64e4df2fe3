import type { APIRoute, GetStaticPaths } from 'astro'
import { builtFigure, builtState } from '../../components/built.ts'
import { stepTags, stillName } from '../../components/chapter/still.ts'
import { allChapters } from '../../components/chapters.ts'
import { figureOf } from '../../components/figures.ts'
import figureStyles from '../../styles/figure.css?raw'
import tokens from '../../styles/tokens.css?raw'

const styles = import.meta.glob<string>('../../styles/figures/*.css', {
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
  // A picture on its own has no access to the page's narrow typeface; wider letters need room at the right.
  const { width: drawn, height } = figure.sizes.narrow
  const width = Math.round(drawn * 1.15)
  const own = Object.entries(styles).filter(
    ([path]) => path.endsWith(`/${figure.id}.css`) || path.endsWith('/detail.css'),
  )
  const css = [tokens, figureStyles, ...own.map(([, text]) => text)]
    .join('\n')
    .replaceAll(':root', 'svg')
    .replace(/\/\*[\s\S]*?\*\/|\s+(?=[{}:;,])|(?<=[{}:;,])\s+/g, '')
  const drawing = builtFigure(figure, run, frame, { shape: 'narrow', prefix: 'still' })
  return new Response(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"><style>${css}</style>${drawing}</svg>`,
    { headers: { 'Content-Type': 'image/svg+xml' } },
  )
}
