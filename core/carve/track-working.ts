import type { Sentence } from '../language/index.ts';
import { input, type Working, type WorkingInput } from '../working/index.ts';
import type { CarveConditions, Equilibrium } from './groove.ts';
import { REBOUND } from './snow-law.ts';
import type { TrackFit } from './track-radius.ts';

const SOURCE = { key: 'source.leastScrape' } as const;

const FORMULA = '(m_4 - m_2^2 - m_3^2 / m_2) / (2 * (q - m_3 * p / m_2))';

/** The radius of a solved track: on it the loaded edge scrapes least. */
export function turnRadiusWorking(equilibrium: Equilibrium): Working {
  const { conditions, turnRadius, track, iterations, residual } = equilibrium;
  return {
    key: 'carve.turnRadius',
    title: { key: 'carve.title.turnRadius' },
    symbol: 'R',
    formula: FORMULA,
    solved: {
      by: { key: 'carve.by.newton', values: { steps: iterations } },
      of: { key: 'carve.of.load' },
      left: 'P',
      right: 'N',
      unit: 'N',
      within: 1e-6,
    },
    inputs: [
      ...momentInputs(track, 'whole'),
      input('P', '\\int f\\,dx', 'carve.loadOfSnow', carriedBySnow(equilibrium), 'N'),
      input('N', 'N', 'working.loadOnSki', conditions.load, 'N'),
    ],
    result: { value: turnRadius, unit: 'm' },
    note: [{ key: 'carve.note.leastScrape' }, balanced(conditions, residual)],
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
  const symbol = which === 'rear' ? 'R_r' : 'R_f';
  const head = {
    key: which === 'rear' ? 'carve.rearRadius' : 'carve.frontRadius',
    title: { key: which === 'rear' ? 'carve.title.rearRadius' : 'carve.title.frontRadius' },
    symbol,
    result: { value: radius, unit: 'm' },
    source: SOURCE,
    status: 'derived',
  } as const;
  if (!tooShort) {
    return {
      ...head,
      formula: FORMULA,
      inputs: momentInputs(fit, which),
    };
  }
  return {
    ...head,
    formula: '1 / (s * kappa + (1 - s) / R)',
    inputs: [
      input('s', 's', 'carve.partShare', share, ''),
      input('kappa', '\\kappa', 'carve.partCurvature', fit.curvature, '1/m'),
      input('R', 'R', 'carve.wholeRadius', turnRadius, 'm', 'carve.turnRadius'),
    ],
    note: { key: 'carve.note.tooShort' },
  };
}

function momentInputs(
  { moments: [m2, m3, m4, p, q] }: TrackFit,
  where: 'rear' | 'front' | 'whole',
): WorkingInput[] {
  const mean = (name: string, of: string, value: number, unit: string): WorkingInput =>
    input(name, name, { key: 'carve.moment', values: { of, where } }, value, unit);
  return [
    mean('m_2', 'x²', m2, 'm^2'),
    mean('m_3', 'x³', m3, 'm^3'),
    mean('m_4', 'x⁴', m4, 'm^4'),
    mean('p', 'x η', p, 'm^2'),
    mean('q', 'x² η', q, 'm^3'),
  ];
}

const balanced = (
  { edgeAngle, load, hardness, rebound = REBOUND }: CarveConditions,
  residual: number,
): Sentence => ({
  key: 'carve.note.balanced',
  values: {
    edge: { quantity: 'angle', value: edgeAngle },
    load: { quantity: 'force', value: load },
    hardness: { quantity: 'hardness', value: hardness },
    rebound: { quantity: 'deflection', value: rebound },
    residual: residual.toExponential(1),
  },
});
