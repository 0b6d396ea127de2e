/** Who may import whom between the rooms of core/: the arrows point one way only. */
const coreRooms = {
  numeric: [],
  units: [],
  conditions: ['units'],
  table: [],
  formula: [],
  pair: ['units', 'table'],
  shape: ['pair', 'numeric'],
  flex: ['pair', 'formula', 'table', 'numeric'],
  carve: ['conditions', 'units', 'shape', 'flex', 'numeric'],
  boot: ['conditions', 'units', 'carve'],
  skier: ['conditions', 'units', 'numeric'],
  run: ['conditions', 'units', 'carve', 'skier', 'table', 'numeric'],
  line: ['conditions', 'units', 'pair', 'carve', 'skier', 'numeric'],
  course: ['conditions', 'units', 'line', 'run', 'skier', 'shape', 'pair', 'table', 'numeric'],
  rules: ['pair', 'shape'],
  kind: ['pair', 'flex', 'run', 'course', 'table'],
  working: [
    'formula',
    'numeric',
    'units',
    'conditions',
    'pair',
    'shape',
    'flex',
    'carve',
    'boot',
    'skier',
    'run',
    'line',
    'course',
    'rules',
  ],
};
/** The packages a room may use; no other leaves or enters the physics. */
const corePackages = { pair: ['zod'], formula: ['mathjs'], rules: ['zod'] };

/** The same in main/. Nothing enters the shell, nor the tools: they are started. */
const mainRooms = {
  host: [],
  disk: ['host'],
  web: ['host', 'disk'],
  calc: ['host', 'disk'],
  electron: ['host', 'disk', 'web', 'calc'],
  tools: ['host', 'web'],
};
const mainPackages = { host: ['zod'], electron: ['electron', 'zod'] };

/** Rooms of renderer/ that keep rules already; the others are free until they do. */
const rendererRooms = { files: ['state', 'host'] };
const rendererPackages = { files: ['@preact/signals', 'd3'] };

const packagesRule = (folder, room, packages = []) => ({
  name: `${folder === 'core' ? '' : `${folder}-`}${room}-packages`,
  comment: `${folder}/${room} may use only ${packages.join(', ') || 'no package'}`,
  severity: 'error',
  from: { path: `^${folder}/${room}/` },
  to: {
    path: 'node_modules/',
    ...(packages.length > 0 && { pathNot: [`node_modules/(${packages.join('|')})/`] }),
  },
});

const coreRules = Object.entries(coreRooms).flatMap(([room, allowed]) => [
  {
    name: `${room}-arrow`,
    comment: `core/${room} may import only ${allowed.join(', ') || 'nothing'}`,
    severity: 'error',
    from: { path: `^core/${room}/` },
    // The types of a working are known to every room, because each explains itself in them.
    to: {
      path: '^core/([^/]+)/',
      pathNot: [`^core/(${[room, ...allowed].join('|')})/`],
      dependencyTypesNot: ['type-only'],
    },
  },
  {
    name: `${room}-type-arrow`,
    comment: `core/${room} may know the types of ${allowed.join(', ') || 'nothing'} and of working only`,
    severity: 'error',
    from: { path: `^core/${room}/` },
    to: {
      path: '^core/([^/]+)/',
      pathNot: [`^core/(${[room, ...allowed, 'working'].join('|')})/`],
      dependencyTypes: ['type-only'],
    },
  },
  packagesRule('core', room, corePackages[room]),
]);

const mainRules = Object.entries(mainRooms).flatMap(([room, allowed]) => [
  {
    name: `main-${room}-arrow`,
    comment: `main/${room} may import only ${allowed.join(', ') || 'nothing'}`,
    severity: 'error',
    from: { path: `^main/${room}/` },
    to: { path: '^main/', pathNot: [`^main/(${[room, ...allowed].join('|')})/`] },
  },
  packagesRule('main', room, mainPackages[room]),
]);

const rendererRules = Object.entries(rendererRooms).flatMap(([room, allowed]) => [
  {
    name: `renderer-${room}-arrow`,
    comment: `renderer/${room} may import only ${allowed.join(', ') || 'nothing'} of the renderer`,
    severity: 'error',
    from: { path: `^renderer/${room}/` },
    to: { path: '^renderer/', pathNot: [`^renderer/(${[room, ...allowed].join('|')})/`] },
  },
  {
    name: `renderer-${room}-by-the-door`,
    comment: `renderer/${room} is entered through its index.ts`,
    severity: 'error',
    from: { path: '^renderer/', pathNot: [`^renderer/${room}/`] },
    to: { path: `^renderer/${room}/`, pathNot: [`^renderer/${room}/index\\.ts$`] },
  },
  packagesRule('renderer', room, rendererPackages[room]),
]);

module.exports = {
  coreRooms,
  mainRooms,
  rendererRooms,
  forbidden: [
    ...coreRules,
    ...mainRules,
    ...rendererRules,
    {
      name: 'by-the-door',
      comment: 'a room is entered through its index.ts',
      severity: 'error',
      from: { path: '^core/([^/]+)/' },
      to: { path: '^core/[^/]+/', pathNot: ['^core/$1/', '^core/[^/]+/index\\.ts$'] },
    },
    {
      name: 'main-by-the-door',
      comment: 'a room of main is entered through its index.ts too',
      severity: 'error',
      from: { path: '^main/([^/]+)/' },
      to: { path: '^main/[^/]+/', pathNot: ['^main/$1/', '^main/[^/]+/index\\.ts$'] },
    },
    {
      name: 'by-the-door-from-outside',
      comment: 'main and renderer enter a room of core through its index.ts',
      severity: 'error',
      from: { path: '^(main|renderer)/' },
      to: { path: '^core/', pathNot: ['^core/[^/]+/index\\.ts$'] },
    },
    {
      name: 'core-stands-alone',
      comment: 'core knows nothing of main, the renderer, Node or Electron',
      severity: 'error',
      from: { path: '^core/' },
      to: { path: '^(main|renderer|test)/|^electron$|node_modules/electron/' },
    },
    {
      name: 'core-without-node',
      severity: 'error',
      from: { path: '^core/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'only-calc-asks-core',
      comment: 'of main, only the command line asks the physics anything',
      severity: 'error',
      from: { path: '^main/', pathNot: ['^main/(calc|host)/'] },
      to: { path: '^core/' },
    },
    {
      name: 'host-asks-only-table',
      comment: 'the seam reads bytes as the core does, and asks nothing of skis',
      severity: 'error',
      from: { path: '^main/host/' },
      to: { path: '^core/', pathNot: ['^core/table/'] },
    },
    {
      name: 'host-without-node',
      comment: 'the page imports the seam, so nothing of Node may stand behind it',
      severity: 'error',
      from: { path: '^main/host/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'renderer-knows-only-the-host-seam',
      comment: 'of main, the renderer knows the door of the seam',
      severity: 'error',
      from: { path: '^renderer/', pathNot: ['vite\\.config\\.ts$'] },
      to: { path: '^main/', pathNot: ['^main/host/index\\.ts$'] },
    },
    {
      name: 'renderer-without-node',
      severity: 'error',
      from: { path: '^renderer/', pathNot: ['vite\\.config\\.ts$'] },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'main-without-renderer',
      severity: 'error',
      from: { path: '^main/' },
      to: { path: '^renderer/' },
    },
    {
      name: 'no-circle',
      comment: 'values never import each other in a circle',
      severity: 'error',
      from: { path: '^(core|main|renderer)/' },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^build/' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.js', '.json'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'default'],
    },
  },
};
