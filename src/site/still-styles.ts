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
 * How letters are set in a picture on its own, which has no access to the page's narrow typeface: in a narrow one of the
 * device, or in a common one made smaller, for its letters are wider. Names at the left end where their drawing begins.
 */
export const letterStyles = [
  ...fitted,
  `svg{--sans:'Arial Narrow','Roboto Condensed','fitted','fitted wide',sans-serif}`,
  '.chain.narrow .band-name{text-anchor:end;transform:translateX(40px)}',
].join('')

/** The picture on its own round a figure so wide and high: the room for wider letters, a third of it at the left. */
export const roomRound = (width: number, height: number): { viewBox: string; width: number } => {
  const whole = Math.round(width * 1.15)
  const left = Math.round((whole - width) / 3)
  return { viewBox: `${-left} 0 ${whole} ${height}`, width: whole }
}
