import type { Working, WorkingInput, WorkingValue } from '../working/index.ts';
import type { LayupSection } from './layup.ts';
import type { Piece } from './layup-pieces.ts';

/** Why the sums are set by hand. */
const SUMMED = 'one sum for what the text writes out, rectangle by rectangle';

const HANDBOOK = 'transformed section, any handbook of strength of materials';

type Told = Pick<Working, 'key' | 'title' | 'symbol' | 'tex' | 'source'> & Pick<Partial<Working>, 'note'>;

const given = (name: string, symbol: string, value: number, unit: string, meaning: string): WorkingInput => ({
  name,
  symbol,
  value,
  unit,
  meaning,
});

/**
 * How a section of a layup comes to its neutral axis, EI, GJ and mass a length: sums over its rectangles, which
 * are the layers (cut where a steel edge ends beside them), the edges and the sidewalls.
 */
export function layupWorkings(section: LayupSection): Working[] {
  const { pieces, neutralAxis, shearAxis, bending, torsion, massPerLength } = section;
  const widths = (at: number, { name, width }: Piece) =>
    given(`w${at}`, `w_{${at}}`, width, 'm', `width of ${name}`);
  const bottoms = (at: number, { name, low }: Piece) =>
    given(`a${at}`, `a_{${at}}`, low, 'm', `underside of ${name} over the base`);
  const tops = (at: number, { name, high }: Piece) =>
    given(`b${at}`, `b_{${at}}`, high, 'm', `top of ${name} over the base`);
  const moduli = (at: number, { name, youngs }: Piece) =>
    given(`E${at}`, `E_{${at}}`, youngs, 'Pa', `Young's modulus of ${name}`);
  const shears = (at: number, { name, shear }: Piece) =>
    given(`G${at}`, `G_{${at}}`, shear, 'Pa', `shear modulus of ${name}`);
  const densities = (at: number, { name, density }: Piece) =>
    given(`rho${at}`, `\\rho_{${at}}`, density, 'kg/m^3', `density of ${name}`);
  const sum = (term: (at: number) => string) => pieces.map((_, at) => term(at + 1)).join(' + ');
  const told = (
    words: Told,
    formula: string,
    result: WorkingValue,
    columns: readonly ((at: number, piece: Piece) => WorkingInput)[],
    more: readonly WorkingInput[] = [],
  ): Working => ({
    ...words,
    texReason: SUMMED,
    formula,
    inputs: [...more, ...pieces.flatMap((piece, at) => columns.map(column => column(at + 1, piece)))],
    result,
    status: 'derived',
  });
  const area = (at: number) => `w${at} * (b${at} - a${at})`;
  return [
    told(
      {
        key: 'flex.layup-axis',
        title: 'Neutral axis over the base',
        symbol: '\\bar z',
        tex: '\\bar z = \\frac{\\sum E_i w_i (b_i - a_i) (a_i + b_i)/2}{\\sum E_i w_i (b_i - a_i)}',
        source: HANDBOOK,
      },
      `(${sum(at => `E${at} * ${area(at)} * (a${at} + b${at}) / 2`)}) / (${sum(at => `E${at} * ${area(at)}`)})`,
      { value: neutralAxis, unit: 'm' },
      [moduli, widths, bottoms, tops],
    ),
    told(
      {
        key: 'flex.layup-bending',
        title: 'Bending stiffness of the section',
        symbol: 'EI',
        tex: 'EI = \\sum E_i w_i \\frac{(b_i - \\bar z)^3 - (a_i - \\bar z)^3}{3}',
        source: HANDBOOK,
        note: 'The integral of E z² over the section about its neutral axis: Σ E(I + A(z − z̄)²).',
      },
      sum(at => `E${at} * w${at} * ((b${at} - z)^3 - (a${at} - z)^3) / 3`),
      { value: bending, unit: 'N*m^2' },
      [moduli, widths, bottoms, tops],
      [{ ...given('z', '\\bar z', neutralAxis, 'm', 'neutral axis over the base'), from: 'flex.layup-axis' }],
    ),
    told(
      {
        key: 'flex.layup-torsion',
        title: 'Torsional stiffness of the section',
        symbol: 'GJ',
        tex: 'GJ = 4 \\sum G_i w_i \\frac{(b_i - z_s)^3 - (a_i - z_s)^3}{3}',
        source: 'classical laminate theory, a strip much wider than thick',
        note:
          'An upper bound: shear of the core through its thickness is left out. z_s is the plane where twist ' +
          'brings no in-plane shear, ΣGAz/ΣGA. Edges and sidewalls count as strips of their own width.',
      },
      `4 * (${sum(at => `G${at} * w${at} * ((b${at} - z)^3 - (a${at} - z)^3) / 3`)})`,
      { value: torsion, unit: 'N*m^2' },
      [shears, widths, bottoms, tops],
      [given('z', 'z_s', shearAxis, 'm', 'plane of twist over the base, the mean height weighed by G')],
    ),
    told(
      {
        key: 'flex.layup-mass',
        title: 'Mass a length of the section',
        symbol: '\\mu',
        tex: '\\mu = \\sum \\rho_i w_i (b_i - a_i)',
        source: 'mass of the rectangles of the section',
      },
      sum(at => `rho${at} * ${area(at)}`),
      { value: massPerLength, unit: 'kg/m' },
      [densities, widths, bottoms, tops],
    ),
  ];
}
