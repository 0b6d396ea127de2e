import { create, UnitDependencies } from 'mathjs';

const { Unit } = create({ UnitDependencies }, {});

/** What a quantity measures, with the SI unit its value is held in and spellings to suggest. */
const KINDS = {
  length: { si: 'm', accepted: 'a length such as 165 cm, 1.65 m, 66 mm or 0.5 in' },
  angle: { si: 'rad', accepted: 'an angle such as 12 deg, 12° or 0.2 rad' },
  force: { si: 'N', accepted: 'a force such as 1200 N, 1.2 kN or 270 lbf' },
  mass: { si: 'kg', accepted: 'a mass such as 2.3 kg, 2300 g or 5 lb' },
  speed: { si: 'm/s', accepted: 'a speed such as 54 km/h, 15 m/s or 34 mph' },
  stiffness: { si: 'N m^2', accepted: 'a stiffness such as 300 N·m² or 100000 lbf in²' },
  spring: { si: 'N/m', accepted: 'a spring constant such as 5 N/mm or 29 lbf/in' },
  hardness: { si: 'N/m^3', accepted: 'a snow hardness such as 1 N/mm³' },
  time: { si: 's', accepted: 'a time such as 1.5 s or 2 min' },
} as const;

export type QuantityKind = keyof typeof KINDS;

export type ParsedQuantity =
  | { readonly ok: true /** SI, angles in rad. */; readonly value: number }
  | { readonly ok: false /** The text found and what is accepted. */; readonly message: string };

export interface ParseOptions {
  /** Unit of a number written without one; without this a bare number is refused. */
  readonly bare?: string;
}

const LONGEST = 60;

/**
 * Read a quantity as a person writes it: a number (comma or point for the decimals) and a unit of the right
 * kind. Never throws; nothing but a number and a unit is read, no expression.
 */
export function parseQuantity(text: string, kind: QuantityKind, { bare }: ParseOptions = {}): ParsedQuantity {
  const { si, accepted } = KINDS[kind];
  const refused: ParsedQuantity = {
    ok: false,
    message: `${JSON.stringify(text.slice(0, LONGEST))} is not accepted; accepted is ${accepted}`,
  };
  const match = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?)\s*(.*)$/i.exec(
    text.trim().replace('−', '-'),
  );
  if (match === null || text.length > LONGEST) return refused;
  const number = Number(match[1].replace(',', '.'));
  const unit = match[2] === '' ? bare : plainUnit(match[2]);
  // The unit table would take a second number inside a unit as a factor, or drop it.
  if (unit === undefined || !Number.isFinite(number) || /^\d|[^^\d-]\d/.test(unit)) return refused;
  try {
    const quantity = new Unit(number, unit);
    if (!quantity.equalBase(new Unit(1, si))) return refused;
    const value = quantity.toNumber(si);
    return Number.isFinite(value) ? { ok: true, value } : refused;
  } catch {
    return refused;
  }
}

export const parseLength = (text: string, options?: ParseOptions) => parseQuantity(text, 'length', options);
export const parseAngle = (text: string, options?: ParseOptions) => parseQuantity(text, 'angle', options);
export const parseForce = (text: string, options?: ParseOptions) => parseQuantity(text, 'force', options);
export const parseMass = (text: string, options?: ParseOptions) => parseQuantity(text, 'mass', options);
export const parseSpeed = (text: string, options?: ParseOptions) => parseQuantity(text, 'speed', options);
export const parseStiffness = (text: string, options?: ParseOptions) =>
  parseQuantity(text, 'stiffness', options);

/** Spellings people use that the unit table does not know. */
function plainUnit(unit: string): string {
  return unit
    .replaceAll('°', 'deg')
    .replaceAll('″', 'in')
    .replaceAll('"', 'in')
    .replaceAll('²', '^2')
    .replaceAll('³', '^3')
    .replaceAll(/[·⋅]/g, ' ')
    .replace(/^kmh$/i, 'km/h')
    .replace(/^mph$/i, 'mi/h')
    .replace(/^lbs$/i, 'lb');
}
