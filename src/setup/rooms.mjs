// The rooms of src: where each one's code runs, and what it may import. Lint keeps to this table.

import boundaries from 'eslint-plugin-boundaries'
import { createTypeScriptImportResolver } from 'eslint-import-resolver-typescript'
import { createNodeResolver, importX } from 'eslint-plugin-import-x'
import { root } from './paths.mjs'

/** Rooms whose code runs anywhere: in the browser, in a worker, in Node, and while the site is built. */
const anywhere = ['mechanism', 'find', 'link', 'words', 'lesson']

/** What the scripts of a page are made of. */
const inBrowser = [...anywhere, 'drawings', 'browser']

/**
 * @typedef {object} Imports
 * @property {string[]} rooms other rooms that it may import
 * @property {string[]} packages that it may import, as patterns
 * @property {boolean} [node] whether it may import Node's own modules
 */

/** @type {Record<string, Imports>} */
const rooms = {
  mechanism: { rooms: [], packages: [] },
  find: { rooms: ['mechanism'], packages: [] },
  link: { rooms: ['mechanism', 'find'], packages: ['jsonc-parser', 'valibot'] },
  words: { rooms: ['mechanism', 'find'], packages: [] },
  lesson: { rooms: ['mechanism', 'words', 'link', 'find'], packages: [] },
  drawings: { rooms: ['mechanism', 'words', 'lesson'], packages: ['d3'] },
  browser: { rooms: inBrowser, packages: ['gsap', 'lean-qr', 'nanostores'] },
  features: {
    rooms: inBrowser,
    packages: ['@cantoo/pdf-lib', 'fflate', 'gifenc', 'idb', 'mediabunny', 'minisearch', 'valibot'],
  },
  workers: { rooms: anywhere, packages: ['workbox-precaching', 'workbox-routing'] },
  site: {
    rooms: [...anywhere, 'drawings'],
    packages: [
      'astro',
      'astro:*',
      '@resvg/resvg-wasm',
      'sharp',
      'linkedom',
      'remark-*',
      'rolldown',
      'svgo',
      'unified',
      'unist-util-visit',
      'valibot',
    ],
    node: true,
  },
  integrations: {
    rooms: [...anywhere, 'drawings', 'site', 'commands', 'setup'],
    packages: ['astro', 'fflate', 'parse5', 'rolldown', 'subset-font', 'workbox-build'],
    node: true,
  },
  commands: { rooms: [...anywhere, 'setup'], packages: ['jsonc-parser', 'valibot'], node: true },
  setup: { rooms: [], packages: ['@playwright/test', 'eslint*', 'lean-qr'], node: true },
}

/** Pages, layouts and the markup of features, which only the build runs. @type {Imports} */
const markup = {
  rooms: [...inBrowser, 'site', 'layouts', 'styles', 'content'],
  packages: ['astro', 'astro:*', 'linkedom'],
}

const scripts = ['src/**/*.astro/*.ts']

const inMarkup = [{ categories: 'markup' }, { categories: 'page' }]

/** Node itself runs these, so their imports are relative and name the file's extension. */
const runByNode = [...anywhere, 'commands', 'setup']

const above = '+(../)'

/** @param {string[]} names */
const foldersOf = (names) => names.map((name) => `src/${name}/**`)

/** Which room a file is in, and what kind of file it is. */
const settings = {
  'boundaries/root-path': root,
  'boundaries/include': ['src/**', 'content/**', 'tests/**'],
  'boundaries/legacy-templates': false,
  'boundaries/elements': [
    { type: 'features', pattern: 'src/features/*', capture: ['feature'], partialMatch: false },
    ...[...Object.keys(rooms), 'pages', 'layouts', 'styles']
      .filter((name) => name !== 'features')
      .map((name) => ({ type: name, pattern: `src/${name}`, partialMatch: false })),
    { type: 'content', pattern: 'content', partialMatch: false },
  ],
  'boundaries/files': [
    { category: 'markup', pattern: 'src/**/*.astro' },
    { category: 'page', pattern: ['src/pages/**/*.ts', 'src/content.config.ts'] },
    { category: 'entry', pattern: 'src/features/*/index.ts' },
    { category: 'messages', pattern: 'src/workers/*-messages.ts' },
    { category: 'style', pattern: 'src/**/*.css' },
  ],
  'boundaries/dependency-nodes': ['import', 'dynamic-import', 'export'],
  'boundaries/additional-dependency-nodes': [
    { selector: 'TSImportType > TSLiteralType > Literal', kind: 'type', name: 'import' },
    { selector: 'TSImportType > Literal', kind: 'type', name: 'import' },
  ],
  'import/resolver': { typescript: true, node: true },
  'import-x/resolver-next': [createTypeScriptImportResolver(), createNodeResolver()],
  'import-x/parsers': { '@typescript-eslint/parser': ['.ts', '.mjs'] },
  'import-x/extensions': ['.ts', '.mjs'],
}

/**
 * @param {object} from
 * @param {Imports} imports
 */
const allowing = (from, { rooms: others, packages, node = false }) => [
  { from, allow: { to: { element: { type: others } } } },
  { from, allow: { to: { module: { origin: 'external', source: packages } } } },
  ...(node ? [{ from, allow: { to: { module: { origin: 'core' } } } }] : []),
]

/** Of two policies that concern an import, the later one decides. */
const policies = [
  ...Object.entries(rooms).flatMap(([type, imports]) => [
    ...allowing({ element: { type } }, imports),
    { from: { element: { type } }, allow: { to: { element: { type } } } },
  ]),
  // Of another feature only its index.ts is for others.
  {
    from: { element: { type: 'features' } },
    disallow: {
      to: { element: { type: 'features', captured: { feature: '!{{ from.element.captured.feature }}' } } },
    },
    message: 'Of another feature only its index.ts may be imported.',
  },
  {
    from: { element: { type: 'features' } },
    allow: { to: { element: { type: 'features' }, file: { categories: 'entry' } } },
  },
  // Both ends of a worker know its messages.
  {
    from: { element: { type: ['features', 'integrations'] } },
    allow: { to: { file: { categories: 'messages' } } },
  },
  // What the build runs: pages, layouts, and the markup of features, which is made of other features' markup.
  ...inMarkup.flatMap((file) => [
    ...allowing({ file }, markup),
    {
      from: { file },
      allow: { to: { element: { type: 'features' }, file: { categories: ['markup', 'entry', 'style'] } } },
    },
  ]),
  {
    from: { element: { type: 'site' } },
    allow: { dependency: { source: `${above}{drawings,styles}/**/*.css\\?raw` } },
  },
  // A saved picture carries the drawings' styles and fonts.
  {
    from: { element: { type: 'features' } },
    allow: {
      dependency: {
        source: [`${above}{drawings,styles}/**/*.css\\?inline`, '@font-subsets/*.woff2\\?inline'],
      },
    },
  },
  // What Node runs as it is.
  {
    from: { element: { type: runByNode } },
    disallow: { dependency: { source: '@/**' } },
    message: 'Node runs this file as it is: write ‘{{ dependency.source }}’ as a relative path.',
  },
]

/**
 * The scripts in markup run in the browser and start a feature. They are known by what they import as written, since
 * the linter has each as a file in a folder of the markup's name, from where no path leads anywhere.
 */
const scriptPolicies = [
  { allow: { dependency: { source: `${above}{${inBrowser.join()}}/**` } } },
  { allow: { dependency: { source: `${above}features/*/{main,index,*-main}.ts` } } },
  { from: { element: { type: 'features' } }, allow: { dependency: { source: '@(./)*.ts' } } },
]

/**
 * @param {object[]} list of policies; what none of them allows is an error
 * @returns {Partial<import('eslint').Linter.RulesRecord>}
 */
const dependencies = (list) => ({
  'boundaries/dependencies': [
    'error',
    {
      default: 'disallow',
      checkAllOrigins: true,
      checkUnknownLocals: true,
      checkInternals: true,
      policies: list,
      message:
        'src/{{ from.element.type }} may not import ‘{{ dependency.source }}’: see the table in src/setup/rooms.mjs.',
    },
  ],
})

/**
 * Names that a room's code must not use without declaring them.
 * @param {string} names
 * @param {string} message
 * @returns {Partial<import('eslint').Linter.RulesRecord>}
 */
const without = (names, message) => ({
  'no-restricted-globals': [
    'error',
    ...names
      .trim()
      .split(/\s+/)
      .map((name) => ({ name, message })),
  ],
})

const pageNames = `document window navigator location history localStorage sessionStorage
  requestAnimationFrame requestIdleCallback matchMedia getComputedStyle alert customElements`
const nodeNames = 'process Buffer global require module __dirname __filename setImmediate'

/** What makes a result depend on anything but the arguments. */
const worldlyNames = `${pageNames} ${nodeNames} globalThis self Date performance setTimeout setInterval queueMicrotask
  URL URLSearchParams crypto fetch XMLHttpRequest WebSocket console`
const pure = 'The model is a function of its arguments: no page, clock, chance, network or address.'

/** @type {import('eslint').Linter.Config[]} */
export const roomRules = [
  {
    plugins: { boundaries, 'import-x': importX },
    settings,
  },
  {
    files: ['src/**'],
    rules: { 'boundaries/no-unknown-files': 'error', ...dependencies(policies) },
  },
  { files: scripts, rules: dependencies(scriptPolicies) },
  {
    files: foldersOf(runByNode),
    rules: { 'import-x/extensions': ['error', 'ignorePackages', { checkTypeImports: true }] },
  },
  {
    files: foldersOf(anywhere),
    rules: without(
      `${pageNames} ${nodeNames}`,
      'This runs in a page, a worker, Node and the build: it has neither.',
    ),
  },
  {
    files: foldersOf(['drawings']),
    rules: without(
      `${pageNames} ${nodeNames}`,
      'A drawing draws into the document that it gets: a page’s or the build’s.',
    ),
  },
  {
    files: [...foldersOf(['features', 'browser']), ...scripts],
    rules: without(nodeNames, 'This runs in the browser, which has no Node.'),
  },
  {
    files: foldersOf(['workers']),
    rules: without(`document window ${nodeNames}`, 'A worker has neither a page nor Node.'),
  },
  {
    files: [
      ...foldersOf(['site', 'integrations', 'commands', 'setup']),
      'src/pages/**/*.ts',
      'src/**/*.astro',
    ],
    ignores: scripts,
    rules: without(pageNames, 'This runs while the site is built, without a page.'),
  },
  {
    files: foldersOf(['mechanism']),
    rules: {
      ...without(worldlyNames, pure),
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: pure }],
    },
  },
]
