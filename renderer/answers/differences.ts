import type { LimitVerdict } from '../../core/rules/index.ts';
import { decimal, formatQuantity, type MeasureName, type System } from '../../core/units/index.ts';
import { t } from '../state/index.ts';
import { verdictText } from './found-text.ts';

/** A value with its standard uncertainty, both in the unit its measure holds. */
export interface Known {
  readonly value: number;
  readonly plusMinus: number;
}

/** What is compared of a pair. Null where its file does not tell. */
export interface Compared {
  readonly name: string;
  /** m */
  readonly length: Known;
  readonly waist: Known;
  readonly sidecutRadius: Known | null;
  /** Carved radius at the edge angle and load on screen, m, and whether the bent ski was solved for it. */
  readonly turnRadius: (Known & { readonly solved: boolean }) | null;
  /** N/m */
  readonly centre: Known | null;
  readonly shovel: Known | null;
  readonly rear: Known | null;
  /** kg */
  readonly mass: Known | null;
  /** rad */
  readonly sideAngle: Known;
  readonly baseBevel: Known;
  /** Greatest speed the chosen turn is held at, m/s; null when it cannot be carved. */
  readonly fastest: Known | null;
  /** Edge angle the chosen turn needs at that speed, rad. */
  readonly edgeAtFastest: number | null;
  readonly verdict: LimitVerdict;
  /** Rules failed or too close to call, in words. */
  readonly doubts: readonly string[];
}

export interface Difference {
  readonly topic: string;
  /** `none` is within the measuring uncertainty, `unknown` when one file does not tell. */
  readonly kind: 'matters' | 'none' | 'unknown';
  readonly text: string;
}

export interface Telling {
  readonly system: System;
  /** The edge angle on screen, degrees, and the radius of the chosen turn, m. */
  readonly edgeDeg: number;
  readonly turnRadius: number;
}

/** Two standard uncertainties of the difference: what measuring again would usually stay within. */
export const tellable = (one: Known, other: Known): boolean =>
  Math.abs(one.value - other.value) > 2 * Math.hypot(one.plusMinus, other.plusMinus);

/** How `one` differs from `other`, in words with numbers; what matters comes first. */
export function differences(one: Compared, other: Compared, telling: Telling): Difference[] {
  const { system, edgeDeg, turnRadius } = telling;
  const names = [one.name, other.name] as const;
  const tell = (topic: Topic, mine: Known | null, theirs: Known | null, measure: MeasureName) =>
    compare(topic, { mine, theirs, measure, system, names });
  const edge = { quantity: 'angleDeg', value: edgeDeg, decimals: 0 } as const;
  const radius = formatQuantity(turnRadius, 'radius', { system }).text;
  const turn = t('differences.topic.turn', { edge });
  const bent = one.turnRadius?.solved && other.turnRadius?.solved ? 'yes' : 'no';
  const all: Difference[] = [
    tell(plain('sidecutRadius'), one.sidecutRadius, other.sidecutRadius, 'radius'),
    alike(one, other)
      ? tell(
          { topic: turn, said: said => t('differences.turn', { ...said, edge, bent }) },
          one.turnRadius,
          other.turnRadius,
          'radius',
        )
      : { topic: turn, kind: 'unknown', text: t('differences.turnNotCompared', { edge }) },
    tell(
      {
        topic: t('differences.topic.heldTurn', { radius }),
        said: said =>
          t('differences.heldTurn', {
            ...said,
            radius,
            ...edgesNeeded(one.edgeAtFastest, other.edgeAtFastest),
          }),
      },
      one.fastest,
      other.fastest,
      'speed',
    ),
    tell(softer('underBoot'), one.centre, other.centre, 'spring'),
    tell(softer('shovel'), one.shovel, other.shovel, 'spring'),
    tell(softer('tail'), one.rear, other.rear, 'spring'),
    tell(plain('length'), one.length, other.length, 'skiLength'),
    tell(plain('waist'), one.waist, other.waist, 'width'),
    tell(plain('mass'), one.mass, other.mass, 'mass'),
    tell(plain('sideEdge'), one.sideAngle, other.sideAngle, 'angle'),
    tell(plain('baseBevel'), one.baseBevel, other.baseBevel, 'angle'),
    ruleDifference(one, other),
  ];
  const order = { matters: 0, none: 1, unknown: 2 };
  return all.toSorted((a, b) => order[a.kind] - order[b.kind]);
}

/** A speed that a ski could hold is worth little where it takes more edge than the skier has. */
function edgesNeeded(
  mine: number | null,
  theirs: number | null,
): { edges: string; edge: string; other: string } {
  if (mine === null || theirs === null) return { edges: 'unknown', edge: '', other: '' };
  const [edge, other] = [mine, theirs].map(value => formatQuantity(value, 'angle', { decimals: 0 }).text);
  return { edges: edge === other ? 'same' : 'differ', edge: edge!, other: other! };
}

/** What a sentence about two values is told with: the first pair, how far apart they are and which is less. */
interface Apart {
  readonly name: string;
  readonly apart: string;
  readonly way: 'less' | 'more';
  readonly percent: string;
  readonly mine: string;
  readonly theirs: string;
}

interface Topic {
  readonly topic: string;
  readonly said: (apart: Apart) => string;
}

const plain = (what: 'sidecutRadius' | 'length' | 'waist' | 'mass' | 'sideEdge' | 'baseBevel'): Topic => ({
  topic: t(`differences.topic.${what}`),
  said: apart => t(`differences.${what}`, apart),
});

const softer = (where: 'underBoot' | 'shovel' | 'tail'): Topic => ({
  topic: t(`differences.topic.${where}`),
  said: apart => t('differences.softer', { ...apart, where }),
});

interface Values {
  readonly mine: Known | null;
  readonly theirs: Known | null;
  readonly measure: MeasureName;
  readonly system: System;
  readonly names: readonly [string, string];
}

function compare({ topic, said }: Topic, values: Values): Difference {
  const { mine, theirs, measure, system, names } = values;
  if (!mine || !theirs) {
    const who = !mine && !theirs ? t('differences.eitherPair') : !mine ? names[0] : names[1];
    return { topic, kind: 'unknown', text: t('differences.unknown', { topic, who }) };
  }
  const text = (known: Known) =>
    formatQuantity(known.value, measure, {
      system,
      uncertainty: known.plusMinus,
      decimals: plainDecimals(measure),
      // These stand in brackets already.
    }).text.replace(/^\((.*)\)°$/, '$1°');
  const shown = { mine: text(mine), theirs: text(theirs) };
  if (!tellable(mine, theirs)) {
    return {
      topic,
      kind: 'none',
      text:
        mine.value === theirs.value
          ? t('differences.same', { topic, mine: shown.mine })
          : t('differences.notMeasurable', { topic, ...shown }),
    };
  }
  const apart = formatQuantity(Math.abs(mine.value - theirs.value), measure, {
    system,
    decimals: decimalsOf(shown.mine, shown.theirs),
  }).text;
  const percent = (Math.abs(mine.value - theirs.value) / theirs.value) * 100;
  return {
    topic,
    kind: 'matters',
    text: said({
      name: names[0],
      apart,
      way: mine.value < theirs.value ? 'less' : 'more',
      percent: decimal(percent, percent < 10 ? 1 : 0),
      ...shown,
    }),
  };
}

/** A difference is told to as many decimals as the coarser of the two values. */
function decimalsOf(...texts: string[]): number {
  return Math.min(...texts.map(text => /\.(\d+)/.exec(text)?.[1]?.length ?? 0));
}

/** A tape read to 1 mm gives a length in tenths of a centimetre, no finer. */
export const plainDecimals = (measure: MeasureName): number | undefined =>
  measure === 'skiLength' ? 1 : undefined;

const alike = (one: Compared, other: Compared) =>
  !one.turnRadius || !other.turnRadius || one.turnRadius.solved === other.turnRadius.solved;

function ruleDifference(one: Compared, other: Compared): Difference {
  const said = ({ name, verdict, doubts }: Compared) =>
    t('differences.verdictOf', {
      name,
      verdict: verdictText(verdict),
      doubts: doubts.join('; '),
      count: doubts.length,
    });
  const topic = t('differences.topic.rules');
  if (one.verdict === 'not given' && other.verdict === 'not given')
    return { topic, kind: 'unknown', text: t('differences.noLimits') };
  return one.verdict === other.verdict
    ? { topic, kind: 'none', text: t('differences.sameVerdict', { verdict: verdictText(one.verdict) }) }
    : { topic, kind: 'matters', text: t('differences.rules', { one: said(one), other: said(other) }) };
}
