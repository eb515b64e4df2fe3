/**
 * Runs at the start of a page, after its styles: decodes the fonts that came with them while the page is still read, so
 * that it is drawn with them at once.
 */
for (const font of document.fonts) if (font.display !== 'optional') void font.load()
