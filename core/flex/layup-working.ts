import type { Key, Sentence } from '../language/index.ts';
import { input, type Working, type WorkingInput, type WorkingValue } from '../working/index.ts';
import type { LayupSection } from './layup.ts';
import type { Piece } from './layup-pieces.ts';

const HANDBOOK = { key: 'source.transformedSection' } as const;

type Told = Pick<Working, 'key' | 'title' | 'symbol' | 'tex' | 'source'> & Pick<Partial<Working>, 'note'>;

/**
 * How a section of a layup comes to its neutral axis, EI, GJ and mass a length: sums over its rectangles, which
 * are the layers (cut where a steel edge ends beside them), the edges and the sidewalls.
 */
export function layupWorkings(section: LayupSection): Working[] {
  const { pieces, neutralAxis, shearAxis, bending, torsion, massPerLength } = section;
  const widths = (at: number, piece: Piece) =>
    input(`w${at}`, `w_{${at}}`, of('flex.layup.width', piece), piece.width, 'm');
  const bottoms = (at: number, piece: Piece) =>
    input(`a${at}`, `a_{${at}}`, of('flex.layup.underside', piece), piece.low, 'm');
  const tops = (at: number, piece: Piece) =>
    input(`b${at}`, `b_{${at}}`, of('flex.layup.top', piece), piece.high, 'm');
  const moduli = (at: number, piece: Piece) =>
    input(`E${at}`, `E_{${at}}`, of('flex.layup.youngs', piece), piece.youngs, 'Pa');
  const shears = (at: number, piece: Piece) =>
    input(`G${at}`, `G_{${at}}`, of('flex.layup.shear', piece), piece.shear, 'Pa');
  const densities = (at: number, piece: Piece) =>
    input(`rho${at}`, `\\rho_{${at}}`, of('flex.layup.density', piece), piece.density, 'kg/m^3');
  const sum = (term: (at: number) => string) => pieces.map((_, at) => term(at + 1)).join(' + ');
  const told = (
    words: Told,
    formula: string,
    result: WorkingValue,
    columns: readonly ((at: number, piece: Piece) => WorkingInput)[],
    more: readonly WorkingInput[] = [],
  ): Working => ({
    ...words,
    texReason: 'sum',
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
        title: { key: 'flex.title.neutralAxis' },
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
        title: { key: 'flex.title.sectionBending' },
        symbol: 'EI',
        tex: 'EI = \\sum E_i w_i \\frac{(b_i - \\bar z)^3 - (a_i - \\bar z)^3}{3}',
        source: HANDBOOK,
        note: { key: 'flex.note.sectionBending' },
      },
      sum(at => `E${at} * w${at} * ((b${at} - z)^3 - (a${at} - z)^3) / 3`),
      { value: bending, unit: 'N*m^2' },
      [moduli, widths, bottoms, tops],
      [input('z', '\\bar z', 'working.neutralAxis', neutralAxis, 'm', 'flex.layup-axis')],
    ),
    told(
      {
        key: 'flex.layup-torsion',
        title: { key: 'flex.title.sectionTorsion' },
        symbol: 'GJ',
        tex: 'GJ = 4 \\sum G_i w_i \\frac{(b_i - z_s)^3 - (a_i - z_s)^3}{3}',
        source: { key: 'source.laminate' },
        note: { key: 'flex.note.sectionTorsion' },
      },
      `4 * (${sum(at => `G${at} * w${at} * ((b${at} - z)^3 - (a${at} - z)^3) / 3`)})`,
      { value: torsion, unit: 'N*m^2' },
      [shears, widths, bottoms, tops],
      [input('z', 'z_s', 'flex.twistPlane', shearAxis, 'm')],
    ),
    told(
      {
        key: 'flex.layup-mass',
        title: { key: 'flex.title.sectionMass' },
        symbol: '\\mu',
        tex: '\\mu = \\sum \\rho_i w_i (b_i - a_i)',
        source: { key: 'source.sectionMass' },
      },
      sum(at => `rho${at} * ${area(at)}`),
      { value: massPerLength, unit: 'kg/m' },
      [densities, widths, bottoms, tops],
    ),
  ];
}

type OfPiece = Extract<Key, `flex.layup.${string}`>;

const of = (key: OfPiece, { name: piece }: Piece): Sentence => ({ key, values: { piece } });
