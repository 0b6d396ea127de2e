import { DEFAULTS } from './defaults.ts';
import { leastWidthMm } from './least-width.ts';
import { LEAST_WIDTH_STATIONS, type Pair } from './pair-schema.ts';
import { PLATE_LENGTH_MM } from './plate-schema.ts';
import { type Problem, problem } from './problem.ts';
import type { PairStiffness } from './stiffness-schema.ts';

const LEAST_WIDTH_MM = 20;

/** The middle of the contact length, in shares of it: a waist or a boot elsewhere is a slip of the pen. */
const MIDDLE = { from: 0.2, to: 0.8 } as const;

/** Relations between fields that are each sane alone: the ski must be one that could exist. */
export function inconsistencies(pair: Pair): Problem[] {
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

function lengths(pair: Pair): Problem[] {
  const found: Problem[] = [];
  const { lengthMm, contactLengthMm: contact, bootCentreFromTailMm: boot, waistFromTailMm: waistAt } = pair;
  if (contact >= lengthMm) {
    found.push(
      problem(
        'contactLengthMm',
        contact,
        `less than lengthMm ${lengthMm}`,
        `${contact} is not shorter than lengthMm ${lengthMm}; the contact length must be the shorter`,
      ),
    );
  }
  const { from, to } = middleOf(pair);
  const middle = `${mm(from)} to ${mm(to)} mm for contactLengthMm ${contact}`;
  if (waistAt !== undefined && !withinMiddle(waistAt, pair)) {
    found.push(problem('waistFromTailMm', waistAt, middle));
  }
  if (boot !== undefined && !withinMiddle(boot, pair)) {
    found.push(problem('bootCentreFromTailMm', boot, middle));
  }
  const sole = pair.bootSoleMm ?? DEFAULTS.bootSoleMm;
  const centre = boot ?? DEFAULTS.bootCentreShare * contact;
  // Of a boot centre that is itself refused, what fits would say nothing.
  if (withinMiddle(centre, pair) && (centre - sole / 2 < 0 || centre + sole / 2 > contact)) {
    const room = 2 * Math.min(centre, contact - centre);
    found.push(
      problem(
        'bootSoleMm',
        pair.bootSoleMm,
        `at most ${mm(room)} mm`,
        `${sole} reaches past the contact length from a boot centre at ${mm(centre)}; at most ${mm(room)} fits`,
      ),
    );
  }
  return found;
}

function waist(pair: Pair): Problem[] {
  const found: Problem[] = [];
  const { waistWidthMm: w } = pair;
  const end = (['tipWidthMm', 'tailWidthMm'] as const).find(each => w >= pair[each]);
  if (end !== undefined) {
    const how = w === pair[end] ? 'as wide as' : 'wider than';
    found.push(
      problem(
        'waistWidthMm',
        w,
        `less than ${end} ${pair[end]}`,
        `${w} is ${how} ${end} ${pair[end]}; the waist must be the narrowest`,
      ),
    );
  }
  if (found.length === 0 && pair.waistFromTailMm !== undefined && withinMiddle(pair.waistFromTailMm, pair)) {
    const least = leastWidthMm(pair);
    if (least < LEAST_WIDTH_MM) {
      found.push(
        problem(
          'waistFromTailMm',
          pair.waistFromTailMm,
          'a station nearer the middle',
          `${pair.waistFromTailMm} makes a ski only ${mm(least)} mm wide between the three widths; ` +
            'accepted is a station nearer the middle',
        ),
      );
    }
  }
  return found;
}

function widthStations(pair: Pair): Problem[] {
  const stations = pair.widthStations;
  if (stations === undefined) return [];
  const contact = pair.contactLengthMm;
  const at = stations.map(station => station.fromTailMm);
  const found = ascendingWithin('widthStations', at, contact);
  if (found.length > 0 || at.length < LEAST_WIDTH_STATIONS) return found;
  const { from, to } = middleOf(pair);
  if (at[0] > from || at[at.length - 1] < to) {
    const accepted = `from ${mm(from)} or less to ${mm(to)} or more`;
    found.push(
      problem(
        'widthStations',
        stations,
        `stations ${accepted}`,
        `${at[0]} to ${at[at.length - 1]} mm leaves too much of the edge unmeasured; accepted is ${accepted}`,
      ),
    );
  }
  const widths = stations.map(station => station.widthMm);
  const least = Math.min(...widths);
  if (least >= widths[0] || least >= widths[widths.length - 1]) {
    found.push(
      problem(
        'widthStations',
        stations,
        'a narrowest width between the two ends',
        `the narrowest width ${least} is at an end; the waist must lie between the ends`,
      ),
    );
  }
  return found;
}

function plate({ plate, contactLengthMm: contact }: Pair): Problem[] {
  if (plate === undefined) return [];
  const { fromTailMm: from, lengthMm: length } = plate;
  const least = PLATE_LENGTH_MM.from;
  // An end that leaves no plate any room is itself at fault, not the length.
  if (from + least > contact) {
    const accepted = `at most ${mm(contact - least)} mm, so that ${least} mm of plate fit contactLengthMm ${contact}`;
    return [problem('plate.fromTailMm', from, accepted)];
  }
  if (from + length <= contact) return [];
  const accepted = `at most ${mm(contact - from)} mm`;
  const sentence = `${length} from ${from} reaches past contactLengthMm ${contact}; ${accepted} fits`;
  return [problem('plate.lengthMm', length, accepted, sentence)];
}

function control({ control: first }: Pair): Problem[] {
  if (first === undefined) return [];
  const repeats = first.repeats ?? [];
  return [
    ...reading('control', first),
    ...repeats.flatMap((each, i) => reading(`control.repeats[${i}]`, each)),
  ];
}

type Reading = NonNullable<NonNullable<Pair['control']>['repeats']>[number];

function reading(at: string, stated: Reading): Problem[] {
  const found: Problem[] = [];
  const { developedLengthMm: length, tailToWaistMm: toWaist, waistWidthMm: waist } = stated;
  if (length !== undefined && toWaist !== undefined && toWaist >= length) {
    found.push(
      problem(
        `${at}.tailToWaistMm`,
        toWaist,
        `less than ${at}.developedLengthMm ${length}`,
        `${toWaist} is not on a ski of ${at}.developedLengthMm ${length}; accepted is less than that`,
      ),
    );
  }
  for (const end of ['frontWidthMm', 'rearWidthMm'] as const) {
    const width = stated[end];
    if (waist === undefined || width === undefined || waist < width) continue;
    found.push(
      problem(
        `${at}.waistWidthMm`,
        waist,
        `less than ${at}.${end} ${width}`,
        `${waist} is not narrower than ${at}.${end} ${width}; the waist must be the narrowest`,
      ),
    );
  }
  return found;
}

function stiffness(
  field: 'bending' | 'torsion',
  value: PairStiffness | undefined,
  contact: number,
): Problem[] {
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
function sides(pair: Pair): Problem[] {
  const least = leastWidthMm(pair);
  return (['bending', 'torsion'] as const).flatMap(field => {
    const layup = pair[field];
    if (layup?.kind !== 'layup') return [];
    return (['edges', 'sidewalls'] as const).flatMap(side => {
      const width = layup[side]?.widthMm;
      if (width === undefined || 2 * width < least) return [];
      const accepted = `less than ${mm(least / 2)} mm, half the width of the ski where it is narrowest`;
      return [problem(`${field}.${side}.widthMm`, width, accepted)];
    });
  });
}

function ascendingWithin(field: string, at: readonly number[], contact: number): Problem[] {
  const found: Problem[] = [];
  at.forEach((x, i) => {
    const name = `${field}[${i}].fromTailMm`;
    if (x > contact) {
      found.push(problem(name, x, `0 to contactLengthMm ${contact}`));
    } else if (i > 0 && x <= at[i - 1]) {
      found.push(
        problem(
          name,
          x,
          `more than ${at[i - 1]}`,
          `${x} does not come after ${at[i - 1]}; stations run from the rear contact point forwards`,
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

const mm = (value: number): string => String(Math.round(value * 10) / 10);
