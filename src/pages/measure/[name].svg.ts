import type { APIRoute, GetStaticPaths } from 'astro'
import { type MeasurementName, measurementNames } from '../../mechanism/measurement.ts'
import { measureFile } from '../../site/measure-picture.ts'

/** A picture for every measurement: where the calliper is put. */
export const getStaticPaths = (() =>
  measurementNames.map((name) => ({ params: { name }, props: { name } }))) satisfies GetStaticPaths

export const GET: APIRoute<{ name: MeasurementName }> = ({ props: { name } }) =>
  new Response(measureFile(name), { headers: { 'Content-Type': 'image/svg+xml' } })
