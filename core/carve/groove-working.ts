import { input, type Working } from '../working/index.ts';
import type { CarvingSki, Equilibrium } from './groove.ts';
import { pressureArm } from './pressure-centre.ts';

/** The torque is summed node by node here and between the nodes by the solution: how far the sums may differ. */
const TORQUE_SUMMED = 1e-3;

const GEOMETRY = { key: 'source.tiltedBase' } as const;

/** The depth of the edge where it is deepest in the snow, from how the base lies there. */
export function penetrationWorking(ski: CarvingSki, equilibrium: Equilibrium): Working {
  const { x, height, twist, penetration, conditions } = equilibrium;
  let at = 0;
  for (let i = 1; i < x.length; i++) if (penetration[i] > penetration[at]) at = i;
  const y = ski.edge.halfWidth(x[at]);
  return {
    key: 'carve.penetration',
    title: { key: 'carve.title.penetration' },
    symbol: 'e',
    formula: 'y * sin(theta - phi) - w * cos(theta)',
    inputs: [
      input('y', 'y', 'carve.halfWidthThere', y, 'm'),
      input('theta', '\\theta', 'working.edgeAngleUnderBoot', conditions.edgeAngle, 'rad'),
      input('phi', '\\varphi', 'working.twistThere', twist[at], 'rad', 'carve.turnRadius'),
      input('w', 'w', 'carve.baseHeightThere', height[at], 'm', 'carve.turnRadius'),
    ],
    result: { value: equilibrium.maxPenetration, unit: 'm' },
    note: { key: 'carve.note.deepest', values: { at: { quantity: 'station', value: x[at] } } },
    source: GEOMETRY,
    status: 'derived',
  };
}

/** How far one end twists open, and the torque it balances; null for a ski rigid in torsion. */
export function twistWorking(ski: CarvingSki, equilibrium: Equilibrium, end: 'tip' | 'tail'): Working | null {
  if (ski.torsion === null) return null;
  const { momentArea, stiffness } = torsionBeyondSole(ski, ski.torsion, equilibrium, end);
  if (!(momentArea > 0)) return null;
  return {
    key: end === 'tip' ? 'carve.twistTip' : 'carve.twistTail',
    title: { key: end === 'tip' ? 'carve.title.twistTip' : 'carve.title.twistTail' },
    symbol: '\\varphi',
    formula: '',
    solved: {
      by: { key: 'carve.by.withGroove', values: { steps: equilibrium.iterations } },
      of: { key: 'carve.of.torsion' },
      left: 'GJ * phi',
      right: 'A',
      name: 'phi',
      unit: 'N*m^2',
      within: TORQUE_SUMMED,
    },
    inputs: [
      input(
        'A',
        '\\int T\\,dx',
        { key: 'carve.torque', values: { end } },
        momentArea,
        'N*m^2',
        'carve.turnRadius',
      ),
      input('GJ', '\\langle GJ\\rangle', 'carve.torsionalStiffness', stiffness, 'N*m^2', 'torsion'),
    ],
    result: { value: end === 'tip' ? equilibrium.twistTip : equilibrium.twistTail, unit: 'rad' },
    note: { key: 'carve.note.twist' },
    source: { key: 'source.torsion' },
    status: 'derived',
  };
}

/** ∫T dx from the sole to an end, N·m², and the torque-weighted mean of GJ there. */
function torsionBeyondSole(
  ski: CarvingSki,
  torsion: NonNullable<CarvingSki['torsion']>,
  equilibrium: Equilibrium,
  end: 'tip' | 'tail',
): { momentArea: number; stiffness: number } {
  const { x, lineLoad } = equilibrium;
  const last = x.length - 1;
  const outer = end === 'tip' ? last : 0;
  const inward = end === 'tip' ? -1 : 1;
  const sole = ski.bootCentre + (end === 'tip' ? 0.5 : -0.5) * ski.soleLength;
  const snow = new Float64Array(6);
  const slack = 1e-9 * ski.edge.length;
  let torque = 0;
  let momentArea = 0;
  let angle = 0;
  for (let i = outer; inward * (sole - x[i]) > slack; i += inward) {
    const share = 0.5 * (x[Math.min(i + 1, last)] - x[Math.max(i - 1, 0)]);
    torque += lineLoad[i] * share * pressureArm(ski, equilibrium, i, snow);
    const next = i + inward;
    const h = Math.abs(x[next] - x[i]);
    momentArea += torque * h;
    angle += (torque * h) / torsion(0.5 * (x[i] + x[next]));
  }
  return { momentArea, stiffness: momentArea / angle };
}
