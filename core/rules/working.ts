import { FieldError } from '../fault/index.ts';
import type { PlainKey, Quantity, Sentence } from '../language/index.ts';
import { MM } from '../units/index.ts';
import { input, type Working } from '../working/index.ts';
import type { CheckedPair } from './check-pair.ts';
import {
  type ControlReading,
  controlRadius,
  controlStations,
  roundedReading,
  rulebookRadius,
  threeReadingAllowance,
} from './control-radius.ts';

const procedure = { key: 'source.controlProcedure' } as const;

const toMillimetre = (key: PlainKey) => readTo(key, { quantity: 'station', value: MM });
const toTenth = (key: PlainKey) => readTo(key, { quantity: 'width', value: 0.1 * MM });
const readTo = (key: PlainKey, step: Quantity): Sentence => ({
  key: 'rules.readTo',
  values: { what: { key }, step },
});

/** How the controller's radius came about; widths as rounded by the procedure. */
export function controlRadiusWorking(reading: ControlReading): Working {
  const { developedLength, tailToWaist, frontWidth, rearWidth, waistWidth } = roundedReading(reading);
  const { distance } = controlStations(developedLength, tailToWaist);
  return {
    key: 'rules.controlRadius',
    title: { key: 'rules.title.controlRadius' },
    symbol: 'R',
    formula: '(0.8*(LTOT - LW) + 0.9*LW)^2/(2*(S + H - 2*W))',
    inputs: [
      input('LTOT', 'L_{TOT}', toMillimetre('rules.reading.developedLength'), developedLength, 'm'),
      input('LW', 'L_W', toMillimetre('rules.reading.tailToWaist'), tailToWaist, 'm'),
      input('S', 'S', toTenth('rules.reading.frontWidth'), frontWidth, 'm'),
      input('H', 'H', toTenth('rules.reading.rearWidth'), rearWidth, 'm'),
      input('W', 'W', toTenth('rules.reading.waistWidth'), waistWidth, 'm'),
    ],
    result: { value: controlRadius(reading), unit: 'm' },
    note: [
      {
        key: 'rules.note.control',
        values: { distance: { quantity: 'station', value: distance }, allowance: threeReadingAllowance },
      },
      { key: 'rules.note.controllerDecides' },
    ],
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
    title: { key: 'rules.title.threeReadings' },
    symbol: 'R_c',
    formula: 'k*(R1 + R2 + R3)/3',
    inputs: [
      input('k', 'k', 'rules.allowance', threeReadingAllowance, '1'),
      ...radii.map((value, i) =>
        input(
          `R${i + 1}`,
          `R_${i + 1}`,
          { key: 'rules.radiusOfNth', values: { nth: String(i + 1) } },
          value,
          'm',
        ),
      ),
    ],
    result: { value: threeReadingAllowance * mean, unit: 'm' },
    note: [
      {
        key: 'rules.note.threeReadings',
        values: {
          mean: { quantity: 'radius', value: mean, decimals: 2 },
          allowance: threeReadingAllowance,
        },
      },
      { key: 'rules.note.controllerDecides' },
    ],
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
  return {
    key: 'rules.catalogueRadius',
    title: { key: 'rules.title.catalogueRadius' },
    symbol: 'R',
    formula: 'L^2/(2*(S + H - 2*W))',
    inputs: [
      input('L', 'L', 'working.contactLength', length, 'm', 'contactLengthMm'),
      input('S', 'S', 'working.tipWidth', front, 'm', 'tipWidthMm'),
      input('H', 'H', 'working.tailWidth', rear, 'm', 'tailWidthMm'),
      input('W', 'W', 'working.waistWidth', waist, 'm', 'waistWidthMm'),
    ],
    result: { value: rulebookRadius(length, front, rear, waist), unit: 'm' },
    note: { key: 'rules.note.otherStations' },
    source: { key: 'source.rulebookInPart' },
    status: 'seen',
  };
}
