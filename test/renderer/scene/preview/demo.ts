import type {
  EdgeSki,
  GatePole,
  HillRun,
  PairStyle,
  SceneTrack,
  SkiBend,
  SkiForm,
} from '../../../../renderer/scene/index.ts';
import { rigidSnowBend } from '../../../../renderer/scene/index.ts';

/** Invented pairs and tracks for looking at the scenes; nothing here is measured. */

export const LARCH: PairStyle = { letter: 'A', colour: '#0072b2', dash: [] };
export const ROWAN: PairStyle = { letter: 'B', colour: '#c4561a', dash: [0.9, 0.45] };
export const GUESS: PairStyle = { letter: '?', colour: '#8a3f7c', dash: [0.25, 0.25] };

export function demoForm(length: number, contact: number, tip: number, waist: number, tail: number): SkiForm {
  const n = 121;
  const x = new Float64Array(n);
  const halfWidth = new Float64Array(n);
  const middle = 0.47;
  for (let i = 0; i < n; i++) {
    const s = i / (n - 1);
    x[i] = s * contact;
    const end = s < middle ? tail : tip;
    const u = s < middle ? (middle - s) / middle : (s - middle) / (1 - middle);
    halfWidth[i] = (waist + (end - waist) * u * u) / 2;
  }
  return { x, halfWidth, contactLength: contact, length, bootCentre: 0.47 * contact, soleLength: 0.3 };
}

function demoBend(form: SkiForm, edgeAngle: number): SkiBend {
  const rigid = rigidSnowBend(form, edgeAngle);
  const n = form.x.length;
  const twist = new Float64Array(n);
  const penetration = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const off = Math.abs(form.x[i] - form.bootCentre);
    twist[i] = 0.045 * Math.max(0, off - 0.15) ** 1.3;
    penetration[i] = 0.012 * Math.exp(-((off / 0.5) ** 2));
  }
  return { ...rigid, twist, penetration };
}

export const LARCH_FORM = demoForm(1.55, 1.36, 0.117, 0.066, 0.104);
export const ROWAN_FORM = demoForm(1.85, 1.63, 0.106, 0.068, 0.092);

export function demoSki(form: SkiForm, style: PairStyle, degrees: number, radius: number): EdgeSki {
  const edgeAngle = (degrees * Math.PI) / 180;
  return { form, style, edgeAngle, bend: demoBend(form, edgeAngle), turnRadius: radius };
}

/** Linked turns with a skid in every third, by plain stepping. */
export function demoTrack(seconds: number, amplitude: number, radius: number, period: number): SceneTrack {
  const n = Math.round(seconds * 100) + 1;
  const column = () => new Float64Array(n);
  const track = {
    t: column(),
    x: column(),
    y: column(),
    heading: column(),
    speed: column(),
    edge: column(),
    lean: column(),
    slip: column(),
    load: column(),
    radius: column(),
    phase: new Uint8Array(n),
  };
  let x = 0;
  let y = 0;
  let heading = -0.75;
  for (let i = 0; i < n; i++) {
    const t = i / 100;
    const wave = Math.sin((2 * Math.PI * t) / period);
    const edge = amplitude * wave;
    const turn = Math.floor(t / (period / 2));
    const skid = turn % 3 === 2 && Math.abs(wave) > 0.55;
    const speed = 9;
    const r = radius * Math.cos(edge);
    track.t[i] = t;
    track.x[i] = x;
    track.y[i] = y;
    track.heading[i] = heading;
    track.speed[i] = speed;
    track.edge[i] = edge;
    track.lean[i] = edge * 0.88;
    track.slip[i] = skid ? 0.5 * 0.22 * Math.min(1, (Math.abs(wave) - 0.55) * 6) : 0;
    track.load[i] = 735 * (0.96 / Math.cos(edge * 0.88));
    track.radius[i] = r;
    track.phase[i] = skid ? 1 : 0;
    heading += ((wave * 1.75 * Math.PI) / period / 2) * 0.01 * 1.1;
    x += speed * Math.sin(heading) * 0.01;
    y += speed * Math.cos(heading) * 0.01;
  }
  return track;
}

export function demoRun(form: SkiForm, style: PairStyle, track: SceneTrack): HillRun {
  return {
    track,
    form,
    style,
    bendAt: row => demoBend(form, Math.min(1.3, Math.abs(track.edge[row]))),
  };
}

/** Poles a little inside the apex of every turn. */
export function demoGates(track: SceneTrack): GatePole[] {
  const gates: GatePole[] = [];
  for (let i = 1; i < track.t.length - 1; i++) {
    const side = Math.sign(track.edge[i]);
    if (track.heading[i - 1] * track.heading[i] < 0)
      gates.push({ x: track.x[i] + side * 0.6, y: track.y[i] });
  }
  return gates;
}
