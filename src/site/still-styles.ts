import tokens from '../styles/tokens.css?raw'

const files = import.meta.glob<string>('../drawings/**/*.css', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** Typefaces that most devices have, how much narrower each is set, in %, and how much narrower when bold. */
const common = [
  { family: 'fitted', faces: ['Arial', 'Helvetica', 'Liberation Sans', 'Roboto'], plain: 96, bold: 88 },
  { family: 'fitted wide', faces: ['DejaVu Sans', 'Verdana'], plain: 82, bold: 74 },
] as const

const faceOf = (family: string, weights: string, faces: readonly string[], percent: number): string =>
  `@font-face{font-family:'${family}';font-weight:${weights};src:${faces.map((face) => `local('${face}')`).join()};size-adjust:${percent}%}`

const fitted = common.flatMap(({ family, faces, plain, bold }) => [
  faceOf(family, '100 500', faces, plain),
  faceOf(
    family,
    '600 900',
    faces.map((face) => `${face} Bold`),
    bold,
  ),
])

/**
 * How text is set in a picture on its own, which has no access to the page's narrow typeface: in a narrow one of the
 * device, or in a common one made smaller, since its letters are wider. Names at the left end where their drawing begins.
 */
const fontStyles = [
  ...fitted,
  `svg{--sans:'Arial Narrow','Roboto Condensed','fitted','fitted wide',sans-serif}`,
  '.chain.narrow .band-name{text-anchor:end;transform:translateX(40px)}',
].join('')

/** All styles that a still picture of a figure may need, for a picture on its own: the shared ones before its own. */
export const stillStyles = (figure: string): string => {
  const styles = ['shared/styles', 'shared/detail', figure].flatMap((folder) =>
    Object.entries(files)
      .filter(([path]) => path.startsWith(`../drawings/${folder}/`))
      .map(([, text]) => text),
  )
  return [tokens, ...styles, fontStyles].join('\n').replaceAll(':root', 'svg')
}
