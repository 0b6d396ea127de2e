import type { Accepted, FieldFault } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { DEFAULTS } from './defaults.ts';
import { leastWidthMm } from './least-width.ts';
import { LEAST_WIDTH_STATIONS, type Pair } from './pair-schema.ts';
import { PLATE_LENGTH_MM } from './plate-schema.ts';
import { shown } from './shown.ts';
import type { PairStiffness } from './stiffness-schema.ts';

const LEAST_WIDTH_MM = 20;

/** The middle of the contact length, in shares of it: a waist or a boot elsewhere is a slip of the pen. */
const MIDDLE = { from: 0.2, to: 0.8 } as const;

/** Relations between fields that are each sane alone: the ski must be one that could exist. */
export function inconsistencies(pair: Pair): FieldFault[] {
  const found = [
    ...lengths(pair),
    ...waist(pair),
    ...widthStations(pair),
    ...control(pair),
    ...plate(pair),
    ...stiffness('bending', pair.bending, pair.contactLengthMm),
    ...stiffness('torsion', pair.torsion, pair.contactLengthMm),
  ];
  // Only a ski that could exist has a narrowest width.
  return found.length > 0 ? found : sides(pair);
}

function lengths(pair: Pair): FieldFault[] {
  const found: FieldFault[] = [];
  const { lengthMm, contactLengthMm: contact, bootCentreFromTailMm: boot, waistFromTailMm: waistAt } = pair;
  if (contact >= lengthMm) {
    found.push(
      fault(
        'contactLengthMm',
        contact,
        { below: lengthMm },
        {
          key: 'pair.notShorter',
          values: { found: contact, length: lengthMm, field: { field: 'lengthMm' } },
        },
      ),
    );
  }
  const { from, to } = middleOf(pair);
  const middle: Accepted = {
    key: 'pair.nearMiddle',
    values: { from: mm(from), to: mm(to), field: { field: 'contactLengthMm' }, contact },
  };
  if (waistAt !== undefined && !withinMiddle(waistAt, pair)) {
    found.push(fault('waistFromTailMm', waistAt, middle));
  }
  if (boot !== undefined && !withinMiddle(boot, pair)) {
    found.push(fault('bootCentreFromTailMm', boot, middle));
  }
  const sole = pair.bootSoleMm ?? DEFAULTS.bootSoleMm;
  const centre = boot ?? DEFAULTS.bootCentreShare * contact;
  // Of a boot centre that is itself refused, what fits would say nothing.
  if (withinMiddle(centre, pair) && (centre - sole / 2 < 0 || centre + sole / 2 > contact)) {
    const room = 2 * Math.min(centre, contact - centre);
    found.push(
      fault(
        'bootSoleMm',
        pair.bootSoleMm,
        { to: mm(room), unit: 'mm' },
        { key: 'pair.soleTooLong', values: { sole, centre: mm(centre), room: mm(room) } },
      ),
    );
  }
  return found;
}

function waist(pair: Pair): FieldFault[] {
  const found: FieldFault[] = [];
  const { waistWidthMm: w } = pair;
  const end = (['tipWidthMm', 'tailWidthMm'] as const).find(each => w >= pair[each]);
  if (end !== undefined) {
    found.push(
      fault(
        'waistWidthMm',
        w,
        { below: pair[end] },
        {
          key: w === pair[end] ? 'pair.waistAsWide' : 'pair.waistWider',
          values: { found: w, end: { field: end }, width: pair[end] },
        },
      ),
    );
  }
  if (found.length === 0 && pair.waistFromTailMm !== undefined && withinMiddle(pair.waistFromTailMm, pair)) {
    const least = leastWidthMm(pair);
    if (least < LEAST_WIDTH_MM) {
      found.push(
        fault(
          'waistFromTailMm',
          pair.waistFromTailMm,
          { key: 'pair.nearerMiddle' },
          { key: 'pair.waistTooNarrow', values: { found: pair.waistFromTailMm, least: mm(least) } },
        ),
      );
    }
  }
  return found;
}

function widthStations(pair: Pair): FieldFault[] {
  const stations = pair.widthStations;
  if (stations === undefined) return [];
  const contact = pair.contactLengthMm;
  const at = stations.map(station => station.fromTailMm);
  const found = ascendingWithin('widthStations', at, contact);
  if (found.length > 0 || at.length < LEAST_WIDTH_STATIONS) return found;
  const { from, to } = middleOf(pair);
  if (at[0] > from || at[at.length - 1] < to) {
    const reach = { from: mm(from), to: mm(to) };
    found.push(
      fault(
        'widthStations',
        stations,
        { key: 'pair.stationsReach', values: reach },
        {
          key: 'pair.edgeUnmeasured',
          values: { first: at[0], last: at[at.length - 1], ...reach },
        },
      ),
    );
  }
  const widths = stations.map(station => station.widthMm);
  const least = Math.min(...widths);
  if (least >= widths[0] || least >= widths[widths.length - 1]) {
    found.push(
      fault(
        'widthStations',
        stations,
        { key: 'pair.narrowestBetween' },
        { key: 'pair.narrowestAtEnd', values: { least } },
      ),
    );
  }
  return found;
}

function plate({ plate, contactLengthMm: contact }: Pair): FieldFault[] {
  if (plate === undefined) return [];
  const { fromTailMm: from, lengthMm: length } = plate;
  const least = PLATE_LENGTH_MM.from;
  // An end that leaves no plate any room is itself at fault, not the length.
  if (from + least > contact) {
    const values = { most: mm(contact - least), least, field: { field: 'contactLengthMm' }, contact };
    return [fault('plate.fromTailMm', from, { key: 'pair.roomForPlate', values })];
  }
  if (from + length <= contact) return [];
  const most = mm(contact - from);
  return [
    fault(
      'plate.lengthMm',
      length,
      { to: most, unit: 'mm' },
      {
        key: 'pair.plateTooLong',
        values: { length, from, field: { field: 'contactLengthMm' }, contact, most },
      },
    ),
  ];
}

function control({ control: first }: Pair): FieldFault[] {
  if (first === undefined) return [];
  const repeats = first.repeats ?? [];
  return [
    ...reading('control', first),
    ...repeats.flatMap((each, i) => reading(`control.repeats[${i}]`, each)),
  ];
}

type Reading = NonNullable<NonNullable<Pair['control']>['repeats']>[number];

function reading(at: string, stated: Reading): FieldFault[] {
  const found: FieldFault[] = [];
  const { developedLengthMm: length, tailToWaistMm: toWaist, waistWidthMm: waist } = stated;
  if (length !== undefined && toWaist !== undefined && toWaist >= length) {
    found.push(
      fault(
        `${at}.tailToWaistMm`,
        toWaist,
        { below: length },
        {
          key: 'pair.notOnSki',
          values: { found: toWaist, field: { field: `${at}.developedLengthMm` }, length },
        },
      ),
    );
  }
  for (const end of ['frontWidthMm', 'rearWidthMm'] as const) {
    const width = stated[end];
    if (waist === undefined || width === undefined || waist < width) continue;
    found.push(
      fault(
        `${at}.waistWidthMm`,
        waist,
        { below: width },
        { key: 'pair.waistNotNarrower', values: { found: waist, end: { field: `${at}.${end}` }, width } },
      ),
    );
  }
  return found;
}

function stiffness(
  field: 'bending' | 'torsion',
  value: PairStiffness | undefined,
  contact: number,
): FieldFault[] {
  if (value === undefined) return [];
  if (value.kind === 'stations') {
    return ascendingWithin(
      `${field}.stations`,
      value.stations.map(s => s.fromTailMm),
      contact,
    );
  }
  if (value.kind !== 'layup') return [];
  return value.layers.flatMap((layer, i) =>
    typeof layer.thicknessMm === 'number'
      ? []
      : ascendingWithin(
          `${field}.layers[${i}].thicknessMm`,
          layer.thicknessMm.map(s => s.fromTailMm),
          contact,
        ),
  );
}

/** Both sides together must leave the layers some width, even where the ski is narrowest. */
function sides(pair: Pair): FieldFault[] {
  const least = leastWidthMm(pair);
  return (['bending', 'torsion'] as const).flatMap(field => {
    const layup = pair[field];
    if (layup?.kind !== 'layup') return [];
    return (['edges', 'sidewalls'] as const).flatMap(side => {
      const width = layup[side]?.widthMm;
      if (width === undefined || 2 * width < least) return [];
      const accepted: Accepted = { key: 'pair.lessThanHalf', values: { half: mm(least / 2) } };
      return [fault(`${field}.${side}.widthMm`, width, accepted)];
    });
  });
}

function ascendingWithin(field: string, at: readonly number[], contact: number): FieldFault[] {
  const found: FieldFault[] = [];
  at.forEach((x, i) => {
    const name = `${field}[${i}].fromTailMm`;
    if (x > contact) {
      const values = { field: { field: 'contactLengthMm' }, contact };
      found.push(fault(name, x, { key: 'pair.onContactLength', values }));
    } else if (i > 0 && x <= at[i - 1]) {
      found.push(
        fault(
          name,
          x,
          { above: at[i - 1] },
          { key: 'pair.stationBehind', values: { found: x, before: at[i - 1] } },
        ),
      );
    }
  });
  return found;
}

function middleOf({ contactLengthMm }: Pair): { from: number; to: number } {
  return { from: MIDDLE.from * contactLengthMm, to: MIDDLE.to * contactLengthMm };
}

function withinMiddle(x: number, pair: Pair): boolean {
  const { from, to } = middleOf(pair);
  return x >= from && x <= to;
}

const mm = (value: number): number => Math.round(value * 10) / 10;

function fault(field: string, value: unknown, accepted: Accepted, because?: Sentence): FieldFault {
  return { field, found: shown(value), accepted, ...(because && { because }) };
}
