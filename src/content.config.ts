import { glob } from 'astro/loaders'
import { defineCollection } from 'astro:content'
import { z } from 'astro/zod'
import { faultKindNames } from './mechanism/fault-kinds.ts'
import { type MeasurementName, measurementNames } from './mechanism/measurement.ts'
import { sceneViewNames } from './words/figures/scene.ts'

const chapters = defineCollection({
  loader: glob({ base: './content/chapters', pattern: '*.mdx' }),
  schema: z.strictObject({
    number: z.number().int().min(1).max(10),
    title: z.string().min(1),
    nav: z.string().min(1).max(24),
    question: z.string().min(1),
    description: z.string().min(1).max(155),
    figures: z.array(z.string()).min(1),
    breaks: z.array(z.string()),
    // The machine in the picture that is shown where the chapter's address is shared: a view of it, or a fault.
    shared: z.enum([...sceneViewNames, ...faultKindNames]),
  }),
})

/** What people type who look for an entry and do not know its name; the search reads it, and no page shows it. */
const searched = z.array(z.string().min(1)).optional()

const glossary = defineCollection({
  loader: glob({ base: './content/glossary', pattern: '*.md' }),
  schema: z.strictObject({ term: z.string().min(1), also: z.array(z.string()).optional(), searched }),
})

const cautions = defineCollection({
  loader: glob({ base: './content/cautions', pattern: '*.md' }),
  schema: z.strictObject({ title: z.string().min(1) }),
})

const faults = defineCollection({
  loader: glob({ base: './content/faults', pattern: '*.md' }),
  schema: z.strictObject({
    kind: z.string(),
    outside: z.array(z.string().min(1)).min(1),
    inside: z.array(z.string().min(1)),
    mend: z.array(z.string().min(1)).min(1),
    cautions: z.array(z.string()),
    searched,
  }),
})

/** How each measurement is taken. */
const taking = defineCollection({
  loader: glob({ base: './content/measurements', pattern: '*.md' }),
  schema: z.strictObject({
    title: z.string().min(1),
    name: z.enum(measurementNames as [MeasurementName, ...MeasurementName[]]),
  }),
})

const sources = defineCollection({
  loader: glob({ base: './content/sources', pattern: '*.md' }),
  schema: z.strictObject({
    author: z.string().min(1),
    title: z.string().min(1),
    year: z.union([z.number(), z.string()]).optional(),
    where: z.string().optional(),
    how: z.enum(['read', 'from memory', 'common practice, no source']),
  }),
})

export const collections = { chapters, glossary, cautions, faults, measurements: taking, sources }
