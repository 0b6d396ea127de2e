import type { Working } from '../working/index.ts';
import type { CarvingSki, Equilibrium } from './groove.ts';
import { pressureArm } from './pressure-centre.ts';

/** The torque is summed node by node here and between the nodes by the solution: how far the sums may differ. */
const TORQUE_SUMMED = 1e-3;

const GEOMETRY = 'Plane geometry of the tilted base';

/** The depth of the edge where it is deepest in the snow, from how the base lies there. */
export function penetrationWorking(ski: CarvingSki, equilibrium: Equilibrium): Working {
  const { x, height, twist, penetration, conditions } = equilibrium;
  let at = 0;
  for (let i = 1; i < x.length; i++) if (penetration[i] > penetration[at]) at = i;
  const y = ski.edge.halfWidth(x[at]);
  return {
    key: 'carve.penetration',
    title: 'Greatest depth of the edge',
    symbol: 'e',
    formula: 'y * sin(theta - phi) - w * cos(theta)',
    inputs: [
      { name: 'y', symbol: 'y', meaning: 'half width there', value: y, unit: 'm' },
      {
        name: 'theta',
        symbol: '\\theta',
        meaning: 'edge angle under the boot',
        value: conditions.edgeAngle,
        unit: 'rad',
      },
      {
        name: 'phi',
        symbol: '\\varphi',
        meaning: 'twist of the ski there',
        from: 'carve.turnRadius',
        value: twist[at],
        unit: 'rad',
      },
      {
        name: 'w',
        symbol: 'w',
        meaning: 'height of the base there, solved',
        from: 'carve.turnRadius',
        value: height[at],
        unit: 'm',
      },
    ],
    result: { value: equilibrium.maxPenetration, unit: 'm' },
    note: `Deepest ${(x[at] * 1e3).toFixed(0)} mm from the rear contact point.`,
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
    title: `Twist at the ${end}`,
    symbol: '\\varphi',
    formula: '',
    solved: {
      by: `together with the groove, in ${equilibrium.iterations} Newton steps`,
      of: 'what the ski resists in torsion and the torque of the snow, both summed from the boot sole outwards',
      left: 'GJ * phi',
      right: 'A',
      name: 'phi',
      unit: 'N*m^2',
      within: TORQUE_SUMMED,
    },
    inputs: [
      {
        name: 'A',
        symbol: '\\int T\\,dx',
        meaning: `torque of the snow load about the midline, summed from the boot sole to the ${end}`,
        from: 'carve.turnRadius',
        value: momentArea,
        unit: 'N*m^2',
      },
      {
        name: 'GJ',
        symbol: '\\langle GJ\\rangle',
        meaning: 'torsional stiffness over that part, its harmonic mean weighed by the torque',
        from: 'torsion',
        value: stiffness,
        unit: 'N*m^2',
      },
    ],
    result: { value: end === 'tip' ? equilibrium.twistTip : equilibrium.twistTail, unit: 'rad' },
    note: 'The boot holds the ski untwisted over its sole; the snow presses on one edge and twists what is beyond.',
    source: 'Saint-Venant torsion of a bar, shear centre on the midline',
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
