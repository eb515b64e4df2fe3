/** Light modules round a code, by ISO/IEC 18004. */
const quietZone = 4

/**
 * A QR code of level M or better as lines of text, two rows of modules a line.
 * @param {string} text
 * @param {boolean} isColoured whether to write black on white whatever the terminal's colours, by its escapes
 * @returns {Promise<string>} lines, each with its end
 */
export async function codeText(text, isColoured) {
  // Not before the packages are installed.
  const { correction, generate } = await import('lean-qr')
  const code = generate(text, { minCorrectionLevel: correction.M })
  let lines = ''
  for (let y = -quietZone; y < code.size + quietZone; y += 2) {
    let line = ''
    for (let x = -quietZone; x < code.size + quietZone; x += 1)
      line += code.get(x, y) ? (code.get(x, y + 1) ? '█' : '▀') : code.get(x, y + 1) ? '▄' : ' '
    lines += isColoured ? `\u001B[30;107m${line}\u001B[0m\n` : `${line}\n`
  }
  return lines
}
