import { DEGREE, MM, N_PER_MM3 } from '../units/index.ts';
import type { Working, WorkingInput } from '../working/index.ts';
import type { CarveConditions, Equilibrium } from './groove.ts';
import { REBOUND } from './snow-law.ts';
import type { TrackFit } from './track-radius.ts';

const SOURCE =
  'Least squares over the solved edge. Equilibrium of a bending and twisting beam in its own groove; Mössner et al., ' +
  'J. Glaciol. (2013): penetration force proportional to displaced volume; wedge form derived';

const FORMULA = '(m_4 - m_2^2 - m_3^2 / m_2) / (2 * (q - m_3 * p / m_2))';

/** The radius of a solved track: on it the loaded edge scrapes least. */
export function turnRadiusWorking(equilibrium: Equilibrium): Working {
  const { conditions, turnRadius, track, iterations, residual } = equilibrium;
  return {
    key: 'carve.turnRadius',
    title: 'Turn radius of the bent ski',
    symbol: 'R',
    formula: FORMULA,
    solved: {
      by: `by ${iterations} Newton steps for the bent and twisted ski in its own groove`,
      of: 'what the snow carries along the edge and the load on the ski',
      left: 'P',
      right: 'N',
      unit: 'N',
      within: 1e-6,
    },
    inputs: [
      ...momentInputs(track, 'the whole loaded edge'),
      {
        name: 'P',
        symbol: '\\int f\\,dx',
        meaning: 'load of the snow along the edge, summed over the solved groove',
        value: carriedBySnow(equilibrium),
        unit: 'N',
      },
      {
        name: 'N',
        symbol: 'N',
        meaning: 'load on the ski, square to its base',
        value: conditions.load,
        unit: 'N',
      },
    ],
    result: { value: turnRadius, unit: 'm' },
    note:
      'The track on which the loaded edge scrapes least: the quadratic that fits its lateral position in the snow ' +
      'best, each point weighed by the snow’s force on it, with offset and yaw free. ' +
      solvedNote(conditions, residual),
    source: SOURCE,
    status: 'derived',
  };
}

/** ∫ f dx, N: the trapezoid rule, which `Equilibrium.lineLoad` is made for. */
function carriedBySnow({ x, lineLoad }: Equilibrium): number {
  let force = 0;
  for (let i = 1; i < x.length; i++) force += 0.5 * (lineLoad[i - 1] + lineLoad[i]) * (x[i] - x[i - 1]);
  return force;
}

/** The same fit for the part of the edge behind (`rear`) or ahead (`front`) of the boot centre: a secondary reading. */
export function partRadiusWorking(
  { turnRadius, rear, front }: Equilibrium,
  which: 'rear' | 'front',
): Working {
  const { radius, tooShort, fit, share } = which === 'rear' ? rear : front;
  const where = which === 'rear' ? 'behind' : 'ahead of';
  const symbol = which === 'rear' ? 'R_r' : 'R_f';
  const head = {
    key: which === 'rear' ? 'carve.rearRadius' : 'carve.frontRadius',
    title: `Radius of the edge ${where} the boot centre`,
    symbol,
    result: { value: radius, unit: 'm' },
    source: SOURCE,
    status: 'derived',
  } as const;
  if (!tooShort) {
    return {
      ...head,
      formula: FORMULA,
      inputs: momentInputs(fit, `the loaded edge ${where} the boot centre`),
    };
  }
  return {
    ...head,
    formula: '1 / (s * kappa + (1 - s) / R)',
    inputs: [
      {
        name: 's',
        symbol: 's',
        meaning: 'what this part counts, from how far its load is spread',
        value: share,
        unit: '',
      },
      {
        name: 'kappa',
        symbol: '\\kappa',
        meaning: 'curvature fitted to this part alone',
        value: fit.curvature,
        unit: '1/m',
      },
      {
        name: 'R',
        symbol: 'R',
        meaning: 'radius of the whole loaded edge',
        from: 'carve.turnRadius',
        value: turnRadius,
        unit: 'm',
      },
    ],
    note: 'The load here sits on too short a stretch to tell a radius: the whole edge’s stands in for what is missing.',
  };
}

function momentInputs({ moments: [m2, m3, m4, p, q] }: TrackFit, where: string): WorkingInput[] {
  const mean = (name: string, symbol: string, of: string, value: number, unit: string): WorkingInput => ({
    name,
    symbol,
    meaning: `mean of ${of} over ${where}, weighed by its load, about its centre; from the solved groove`,
    value,
    unit,
  });
  return [
    mean('m_2', 'm_2', 'x² (x along the ski)', m2, 'm^2'),
    mean('m_3', 'm_3', 'x³', m3, 'm^3'),
    mean('m_4', 'm_4', 'x⁴', m4, 'm^4'),
    mean('p', 'p', 'x η (η sideways in the snow)', p, 'm^2'),
    mean('q', 'q', 'x² η', q, 'm^3'),
  ];
}

function solvedNote(conditions: CarveConditions, residual: number): string {
  const degrees = (conditions.edgeAngle / DEGREE).toFixed(1);
  const short = (value: number) => Number(value.toPrecision(3));
  return (
    `At an edge angle of ${degrees}°, a load of ${conditions.load.toFixed(0)} N, a snow hardness of ` +
    `${short(conditions.hardness / N_PER_MM3)} N/mm³ and a rebound of ${short((conditions.rebound ?? REBOUND) / MM)} mm: ` +
    `forces and moments are balanced to ${residual.toExponential(1)} of the load.`
  );
}
