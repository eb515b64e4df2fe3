/**
 * What stands at the start of a page, after its styles: decodes the letters that came with them while the page is still
 * read, so that it is drawn with them at once.
 */
export const lettersNow = "for (const font of document.fonts) if (font.display !== 'optional') font.load()"
