import { type Config, optimize, type PluginConfig } from 'svgo'

/** What is not to be seen, and the parts' names, which only scripts ask for. */
const leftOut: PluginConfig[] = [
  { name: 'removeAttrs', params: { attrs: 'data-part' } },
  {
    name: 'hidden',
    fn: () => ({
      element: {
        enter: (node, parent) => {
          if (node.attributes.display !== 'none') return
          parent.children = parent.children.filter((child) => child !== node)
        },
      },
    }),
  },
]

/** Paths in fewer words, their lines and curves left as they are; drawings have tenths of a pixel, sums of them too. */
const paths: PluginConfig = {
  name: 'convertPathData',
  params: {
    floatPrecision: 2,
    noSpaceAfterFlags: true,
    applyTransforms: false,
    convertToQ: false,
    makeArcs: { threshold: 0, tolerance: 0 },
    removeUseless: false,
    smartArcRounding: false,
    straightCurves: false,
  },
}

/** Only the styles of what is in the picture, each rule where it was: a later one still stands over an earlier. */
const styles: PluginConfig = {
  name: 'minifyStyles',
  params: { restructure: false, usage: { force: true } },
}

const by = (svg: string, plugins: NonNullable<Config['plugins']>): string => optimize(svg, { plugins }).data

const root = '<svg xmlns="http://www.w3.org/2000/svg">'

/** The inside of a picture that no script draws on, in fewer words and without what is hidden in it. */
export const minified = (markup: string): string =>
  by(`${root}${markup}</svg>`, [...leftOut, paths]).slice(root.length, -'</svg>'.length)

/** A picture on its own: its inside, already short, with those of the styles that it needs. */
export const withStyles = (attributes: string, css: string, markup: string): string =>
  by(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}><style>${css}</style>${markup}</svg>`, [
    styles,
  ]).replace(/<style>.*?<\/style>/s, (element) => element.replaceAll('&apos;', "'").replaceAll('&quot;', '"'))
