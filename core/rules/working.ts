import { FieldError } from '../fault/index.ts';
import type { Working } from '../working/index.ts';
import type { CheckedPair } from './check-pair.ts';
import {
  type ControlReading,
  controlRadius,
  controlStations,
  roundedReading,
  rulebookRadius,
  threeReadingAllowance,
} from './control-radius.ts';

const procedure =
  'International federation equipment specification, control procedure as reported; seen in part, ' +
  'confirm in the annex of the specification in force';

/** How the controller's radius came about; widths as rounded by the procedure. */
export function controlRadiusWorking(reading: ControlReading): Working {
  const { developedLength, tailToWaist, frontWidth, rearWidth, waistWidth } = roundedReading(reading);
  const { distance } = controlStations(developedLength, tailToWaist);
  return {
    key: 'rules.controlRadius',
    title: 'Radius by the control procedure',
    symbol: 'R',
    formula: '(0.8*(LTOT - LW) + 0.9*LW)^2/(2*(S + H - 2*W))',
    inputs: [
      {
        name: 'LTOT',
        symbol: 'L_{TOT}',
        meaning: 'developed length, to 1 mm',
        value: developedLength,
        unit: 'm',
      },
      {
        name: 'LW',
        symbol: 'L_W',
        meaning: 'tail to the narrowest point, to 1 mm',
        value: tailToWaist,
        unit: 'm',
      },
      {
        name: 'S',
        symbol: 'S',
        meaning: 'width at 80 % of the front part, to 0.1 mm',
        value: frontWidth,
        unit: 'm',
      },
      {
        name: 'H',
        symbol: 'H',
        meaning: 'width at 90 % of the rear part, to 0.1 mm',
        value: rearWidth,
        unit: 'm',
      },
      {
        name: 'W',
        symbol: 'W',
        meaning: 'width at the narrowest point, to 0.1 mm',
        value: waistWidth,
        unit: 'm',
      },
    ],
    result: { value: controlRadius(reading), unit: 'm' },
    note:
      `Measured over L = ${(distance * 1000).toFixed(0)} mm. A first reading under the limit is followed by two ` +
      `more; ${threeReadingAllowance} times the mean of the three then decides. Only the equipment controller decides.`,
    source: procedure,
    status: 'seen',
  };
}

/**
 * What is compared with the limit once a first reading under it has been followed by two more.
 * `RangeError` unless there are three.
 */
export function threeReadingsWorking(readings: readonly ControlReading[]): Working {
  if (readings.length !== 3) {
    throw new FieldError({ field: 'readings', found: readings.length, accepted: { oneOf: [3] } });
  }
  const radii = readings.map(controlRadius);
  const mean = (radii[0] + radii[1] + radii[2]) / 3;
  return {
    key: 'rules.threeReadings',
    title: 'Three readings of the control',
    symbol: 'R_c',
    formula: 'k*(R1 + R2 + R3)/3',
    inputs: [
      { name: 'k', symbol: 'k', meaning: 'allowance on the mean', value: threeReadingAllowance, unit: '1' },
      ...radii.map((value, i) => ({
        name: `R${i + 1}`,
        symbol: `R_${i + 1}`,
        meaning: `radius of the ${['first', 'second', 'third'][i]} reading`,
        value,
        unit: 'm',
      })),
    ],
    result: { value: threeReadingAllowance * mean, unit: 'm' },
    note:
      `The mean of the three is ${mean.toFixed(2)} m. The pair is accepted when ${threeReadingAllowance} times it is at or over the limit. Only the ` +
      'equipment controller decides.',
    source: procedure,
    status: 'seen',
  };
}

/** The rulebook's formula on a pair's own widths, as the check uses it without a control measurement. */
export function catalogueRadiusWorking(pair: CheckedPair): Working {
  const length = pair.contactLengthMm / 1000;
  const front = pair.tipWidthMm / 1000;
  const rear = pair.tailWidthMm / 1000;
  const waist = pair.waistWidthMm / 1000;
  const input = (name: string, meaning: string, value: number, from: string) => ({
    name,
    symbol: name,
    meaning,
    value,
    unit: 'm',
    from,
  });
  return {
    key: 'rules.catalogueRadius',
    title: 'Radius by the rulebook formula',
    symbol: 'R',
    formula: 'L^2/(2*(S + H - 2*W))',
    inputs: [
      input('L', 'contact length', length, 'contactLengthMm'),
      input('S', 'tip width', front, 'tipWidthMm'),
      input('H', 'tail width', rear, 'tailWidthMm'),
      input('W', 'waist width', waist, 'waistWidthMm'),
    ],
    result: { value: rulebookRadius(length, front, rear, waist), unit: 'm' },
    note: 'The control measures its widths at other stations; only the equipment controller decides.',
    source: 'International federation equipment specification, seen in part',
    status: 'seen',
  };
}
