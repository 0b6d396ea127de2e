/** Who may import whom between the rooms of core/: the arrows point one way only. */
const rooms = {
  numeric: [],
  units: [],
  pair: ['units'],
  shape: ['pair', 'numeric'],
  flex: ['pair', 'numeric'],
  carve: ['shape', 'flex', 'numeric'],
  boot: ['carve'],
  skier: ['numeric'],
  run: ['carve', 'skier', 'numeric'],
  line: ['skier', 'numeric'],
  course: ['run', 'shape', 'pair'],
  rules: ['pair', 'shape'],
  working: [
    'numeric',
    'units',
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
const packages = { pair: ['zod'], flex: ['mathjs'], rules: ['zod'], working: ['mathjs'] };

const roomRules = Object.entries(rooms).flatMap(([room, allowed]) => [
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
  {
    name: `${room}-packages`,
    comment: `core/${room} may use only ${packages[room]?.join(', ') ?? 'no package'}`,
    severity: 'error',
    from: { path: `^core/${room}/` },
    to: {
      path: 'node_modules/',
      ...(packages[room] && { pathNot: [`node_modules/(${packages[room].join('|')})/`] }),
    },
  },
]);

module.exports = {
  forbidden: [
    ...roomRules,
    {
      name: 'by-the-door',
      comment: 'a room is entered through its index.ts',
      severity: 'error',
      from: { path: '^core/([^/]+)/' },
      to: { path: '^core/[^/]+/', pathNot: ['^core/$1/', '^core/[^/]+/index\\.ts$'] },
    },
    {
      name: 'by-the-door-from-outside',
      comment: 'main and renderer enter a room through its index.ts too',
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
      name: 'renderer-knows-only-the-host-seam',
      severity: 'error',
      from: { path: '^renderer/', pathNot: ['vite\\.config\\.ts$'] },
      to: { path: '^main/', pathNot: ['^main/host/'] },
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
