/** The folder of the archive that holds the site. */
export const folder = 'site'

/** What a newcomer sees beside that folder, and is to open. */
export const startPage = `<!doctype html>
<html lang="en-GB">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta http-equiv="refresh" content="0; url=${folder}/index.html" />
    <title>Every Eighth Needle</title>
  </head>
  <body>
    <p><a href="${folder}/index.html">Every Eighth Needle</a></p>
  </body>
</html>
`

/** What the archive says of itself. Lines end as every plain editor shows them. */
export const readme = (version: string, address: string | null): string =>
  [
    `Every Eighth Needle, version ${version}`,
    '',
    'How a punched card selects the needles of a knitting machine.',
    '',
    'Unpack this archive, for instance onto a USB stick, then open START-HERE.html',
    'with a double click. Any usual browser will do. No network is needed, and',
    'nothing is installed.',
    '',
    `START-HERE.html and the folder "${folder}" belong together: copy both.`,
    '',
    address
      ? `Links and QR codes that you make lead to ${address}`
      : 'Links that you copy work on this device only, from where these files lie.',
    'Progress in the questions is kept by the browser, where it allows that for files.',
    '',
    'The drawing is of a training machine, and its dimensions are illustrative:',
    'measure your own. Licence: MIT. Fonts: SIL Open Font License 1.1. GSAP: its own',
    'free "no charge" licence.',
    '',
  ].join('\r\n')
