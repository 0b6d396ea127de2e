/** Who may import whom between the rooms of core/: the arrows point one way only. */
const coreRooms = {
  fault: [],
  units: [],
  language: ['units'],
  conditions: ['fault', 'units'],
  numeric: ['fault'],
  table: ['fault'],
  formula: ['fault'],
  working: ['fault', 'formula'],
  pair: ['fault', 'units', 'table'],
  shape: ['fault', 'pair', 'numeric', 'working'],
  flex: ['fault', 'units', 'pair', 'formula', 'table', 'numeric', 'working'],
  carve: ['fault', 'conditions', 'units', 'shape', 'flex', 'numeric', 'working'],
  boot: ['fault', 'conditions', 'units', 'pair', 'carve', 'working'],
  skier: ['fault', 'conditions', 'units', 'numeric'],
  run: ['fault', 'conditions', 'units', 'carve', 'skier', 'table', 'numeric', 'working'],
  line: ['fault', 'conditions', 'units', 'pair', 'shape', 'carve', 'skier', 'numeric', 'working'],
  course: [
    'fault',
    'conditions',
    'units',
    'line',
    'run',
    'skier',
    'shape',
    'pair',
    'table',
    'numeric',
    'working',
  ],
  rules: ['fault', 'units', 'pair', 'shape', 'working'],
  kind: ['fault', 'pair', 'flex', 'run', 'course', 'table'],
};
/** Rooms whose types every room explains itself in. */
const explaining = ['working', 'fault', 'language', 'units'];
/** The packages a room may use; no other leaves or enters the physics. */
const corePackages = { pair: ['zod'], formula: ['mathjs'], rules: ['zod'], language: ['intl-messageformat'] };

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

/**
 * The same in renderer/, in the order of the arrows. A room beside another is named by neither. `views/NAME` are
 * rooms too, and none of them imports another.
 */
const rendererRooms = {
  state: [],
  host: [],
  scene: [],
  demo: ['state'],
  theme: ['state'],
  files: ['state', 'host'],
  answers: ['state'],
  kit: ['state', 'host', 'theme'],
  help: ['state', 'kit'],
  controls: ['state', 'answers', 'kit'],
  rules: ['state', 'answers', 'files', 'kit'],
  rack: ['state', 'host', 'demo', 'answers', 'files', 'kit'],
  print: ['state', 'host', 'answers', 'kit', 'help', 'rack'],
  squad: ['state', 'host', 'demo', 'answers', 'files', 'kit', 'help', 'rack', 'print'],
  views: [
    'state',
    'host',
    'scene',
    'demo',
    'theme',
    'files',
    'answers',
    'kit',
    'help',
    'controls',
    'rules',
    'rack',
    'squad',
    'print',
  ],
  frame: ['state', 'host', 'demo', 'theme', 'files', 'answers', 'kit', 'help', 'rack', 'print', 'views'],
};
const drawn = ['preact', '@preact/signals'];
const rendererPackages = {
  state: ['@preact/signals', 'zod'],
  host: ['idb', 'zod'],
  scene: ['three'],
  theme: ['@preact/signals'],
  files: ['@preact/signals', 'd3'],
  answers: ['@preact/signals', 'comlink', 'd3', 'lru-cache'],
  kit: [...drawn, 'd3', 'temml'],
  help: drawn,
  controls: drawn,
  rules: drawn,
  rack: drawn,
  print: [...drawn, 'd3'],
  squad: [...drawn, 'd3'],
  views: [...drawn, 'd3'],
  frame: drawn,
};

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
    // The types of workings, faults and sentences are known to every room, because each explains itself in them.
    to: {
      path: '^core/([^/]+)/',
      pathNot: [`^core/(${[room, ...allowed].join('|')})/`],
      dependencyTypesNot: ['type-only'],
    },
  },
  {
    name: `${room}-type-arrow`,
    comment: `core/${room} may know the types of ${[...allowed, ...explaining].join(', ')} only`,
    severity: 'error',
    from: { path: `^core/${room}/` },
    to: {
      path: '^core/([^/]+)/',
      pathNot: [`^core/(${[room, ...allowed, ...explaining].join('|')})/`],
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
  packagesRule('renderer', room, rendererPackages[room]),
]);

module.exports = {
  coreRooms,
  explaining,
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
      name: 'renderer-by-the-door',
      comment: 'a room of renderer is entered through its index.ts, by its neighbours',
      severity: 'error',
      from: { path: '^renderer/([^/]+)/' },
      to: { path: '^renderer/[^/]+/', pathNot: ['^renderer/$1/', '^renderer/[^/]+/index\\.ts$'] },
    },
    {
      name: 'page-by-the-door',
      comment: 'and by the page itself',
      severity: 'error',
      from: { path: '^renderer/[^/]+$' },
      to: { path: '^renderer/[^/]+/', pathNot: ['^renderer/[^/]+/index\\.ts$'] },
    },
    {
      name: 'no-view-imports-a-view',
      comment: 'what two views show is derived in answers, and drawn in kit, controls or rules',
      severity: 'error',
      from: { path: '^renderer/views/([^/]+)/' },
      to: { path: '^renderer/views/', pathNot: ['^renderer/views/$1/', '^renderer/views/view\\.ts$'] },
    },
    {
      name: 'view-by-the-door',
      comment: 'a view is entered through its index.tsx, where views are listed',
      severity: 'error',
      from: { path: '^renderer/views/[^/]+$' },
      to: { path: '^renderer/views/[^/]+/', pathNot: ['^renderer/views/[^/]+/index\\.tsx$'] },
    },
    {
      name: 'jobs-know-only-core',
      comment: 'what runs in a worker knows neither the page nor its state',
      severity: 'error',
      from: { path: '^renderer/answers/jobs/' },
      to: { path: '^renderer/', pathNot: ['^renderer/answers/jobs/'] },
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
      comment:
        'of main, only the command line asks the physics anything; what a person reads has its words in core',
      severity: 'error',
      from: { path: '^main/', pathNot: ['^main/(calc|host)/'] },
      to: { path: '^core/', pathNot: ['^core/language/'] },
    },
    {
      name: 'host-asks-only-texts',
      comment: 'the seam reads bytes and knows what they hold as the core does, and asks nothing of skis',
      severity: 'error',
      from: { path: '^main/host/' },
      to: { path: '^core/', pathNot: ['^core/(table|kind|language)/'] },
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
