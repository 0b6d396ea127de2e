import { createScene, type SceneHandle, type ThemeName } from '../../../../renderer/scene/index.ts';
import {
  demoGates,
  demoRun,
  demoSki,
  demoTrack,
  GUESS,
  LARCH,
  LARCH_FORM,
  ROWAN,
  ROWAN_FORM,
} from './demo.ts';

/**
 * A page to look at the scenes: ?kind=edge|hill&theme=…&camera=…&t=share&two&figure&guess&edge=DEG&look=plain
 */
const query = new URLSearchParams(location.search);
const theme = (query.get('theme') ?? 'snow') as ThemeName;
const stage = document.querySelector<HTMLElement>('#stage')!;
const look = query.get('look') === 'plain' ? 'plain' : 'full';
if (theme === 'night') {
  Object.assign(LARCH, { colour: '#56b4e9' });
  Object.assign(ROWAN, { colour: '#e69f00' });
}
const options = { theme, look, reducedMotion: true } as const;

declare global {
  interface Window {
    scene: SceneHandle<never, string>;
  }
}

if (query.get('kind') === 'hill') {
  const scene = createScene(stage, { kind: 'hill', ...options });
  const track = demoTrack(12, 1.0, 12, 3.2);
  const runs = [demoRun(LARCH_FORM, LARCH, track)];
  if (query.has('two')) runs.push(demoRun(ROWAN_FORM, ROWAN, demoTrack(12, 0.85, 16, 3.5)));
  scene.update({
    slope: (Number(query.get('slope') ?? 17) * Math.PI) / 180,
    runs,
    mass: 75,
    gates: demoGates(track),
    exaggeration: Number(query.get('exaggeration') ?? 1),
  });
  if (query.has('camera')) scene.setCamera(query.get('camera') as 'follow');
  scene.seek(scene.duration * Number(query.get('t') ?? 0.5));
  window.scene = scene as unknown as Window['scene'];
} else {
  const scene = createScene(stage, { kind: 'edge', ...options });
  const degrees = Number(query.get('edge') ?? 48);
  const radius = (form: number) => form * Math.cos((degrees * Math.PI) / 180);
  const skis = [demoSki(LARCH_FORM, LARCH, degrees, radius(12.5))];
  if (query.has('two')) skis.push(demoSki(ROWAN_FORM, ROWAN, degrees, radius(18)));
  const guess = query.has('guess');
  scene.update({
    slopeAngle: (Number(query.get('slope') ?? 14) * Math.PI) / 180,
    skis,
    extraArcs: guess ? [{ turnRadius: radius(15), style: GUESS, label: 'guess' }] : [],
    miss: guess ? { from: 0, to: skis.length } : null,
    turn: query.has('left') ? -1 : 1,
    exaggeration: Number(query.get('exaggeration') ?? 1),
    lean: query.has('figure') ? (degrees - 6) * (Math.PI / 180) : null,
  });
  if (query.has('camera')) scene.setCamera(query.get('camera') as 'ski');
  scene.seek(scene.duration * Number(query.get('t') ?? 0.5));
  window.scene = scene as unknown as Window['scene'];
}
