/** A chapter's text as its readers have it, without what is for the teacher alone. */
export const withoutNotes = (mdx: string): string => mdx.replace(/<Notes>[\s\S]*?<\/Notes>/g, '')
