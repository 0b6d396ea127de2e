import type { LimitVerdict } from '../../core/rules/index.ts';
import { DEGREE, decimal, formatQuantity, type MeasureName, type System } from '../../core/units/index.ts';

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
  const tell = (topic: string, mine: Known | null, theirs: Known | null, measure: MeasureName, say: Say) =>
    compare({ topic, measure, system, say, names: [one.name, other.name] }, mine, theirs);
  const share = (what: string): Say => {
    return ({ mine, theirs }) => {
      const percent = (Math.abs(mine - theirs) / theirs) * 100;
      return `is ${decimal(percent, percent < 10 ? 1 : 0)} % ${mine < theirs ? 'softer' : 'stiffer'} ${what}`;
    };
  };
  const turnKind =
    one.turnRadius?.solved && other.turnRadius?.solved ? 'and bent into the snow' : 'by the cosine rule';
  const chosen = formatQuantity(turnRadius, 'radius', { system }).text;
  const all: Difference[] = [
    tell(
      'Sidecut radius',
      one.sidecutRadius,
      other.sidecutRadius,
      'radius',
      ({ mine, theirs, apart }) => `turns ${apart} ${mine < theirs ? 'tighter' : 'wider'} by its sidecut`,
    ),
    alike(one, other)
      ? tell(
          `Turn at ${decimal(edgeDeg, 0)}°`,
          one.turnRadius,
          other.turnRadius,
          'radius',
          ({ mine, theirs, apart }) =>
            `carves ${apart} ${mine < theirs ? 'tighter' : 'wider'} when tilted to ${decimal(edgeDeg, 0)}° ${turnKind}`,
        )
      : {
          topic: `Turn at ${decimal(edgeDeg, 0)}°`,
          kind: 'unknown',
          text: `The turn at ${decimal(edgeDeg, 0)}° is not compared: only one of the two is solved bent, the other by the cosine rule.`,
        },
    tell(
      `A ${chosen} turn`,
      one.fastest,
      other.fastest,
      'speed',
      ({ mine, theirs, apart }) =>
        `holds a ${chosen} turn to a speed ${apart} ${mine > theirs ? 'higher' : 'lower'}` +
        edgesNeeded(one.edgeAtFastest, other.edgeAtFastest),
    ),
    tell('Under the boot', one.centre, other.centre, 'spring', share('under the boot')),
    tell('Shovel', one.shovel, other.shovel, 'spring', share('in the shovel')),
    tell('Tail', one.rear, other.rear, 'spring', share('in the tail')),
    tell(
      'Length',
      one.length,
      other.length,
      'skiLength',
      ({ mine, theirs, apart }) => `is ${apart} ${mine < theirs ? 'shorter' : 'longer'}`,
    ),
    tell(
      'Waist',
      one.waist,
      other.waist,
      'width',
      ({ mine, theirs, apart }) =>
        `is ${apart} ${mine < theirs ? 'narrower at the waist, so it takes less to tip' : 'wider at the waist, so it takes more to tip'}`,
    ),
    tell(
      'Mass',
      one.mass,
      other.mass,
      'mass',
      ({ mine, theirs, apart }) => `is ${apart} ${mine < theirs ? 'lighter' : 'heavier'} a ski`,
    ),
    tell(
      'Side edge',
      one.sideAngle,
      other.sideAngle,
      'angle',
      ({ mine, theirs, apart }) => `is ${apart} ${mine < theirs ? 'keener' : 'blunter'} at the side edge`,
    ),
    tell(
      'Base bevel',
      one.baseBevel,
      other.baseBevel,
      'angle',
      ({ mine, theirs, apart }) =>
        `has ${apart} ${mine < theirs ? 'less' : 'more'} base bevel, so it bites ${mine < theirs ? 'earlier' : 'later'}`,
    ),
    ruleDifference(one, other),
  ];
  const order = { matters: 0, none: 1, unknown: 2 };
  return all.toSorted((a, b) => order[a.kind] - order[b.kind]);
}

/** A speed that a ski could hold is worth little where it takes more edge than the skier has. */
function edgesNeeded(mine: number | null, theirs: number | null): string {
  if (mine === null || theirs === null) return '';
  const [one, other] = [mine, theirs].map(angle => decimal(angle / DEGREE, 0));
  return one === other ? `, both on ${one}° of edge` : `, on ${one}° of edge instead of ${other}°`;
}

/** What is said of the first pair, from its verb on. */
type Say = (values: { mine: number; theirs: number; apart: string }) => string;

interface Topic {
  readonly topic: string;
  readonly measure: MeasureName;
  readonly system: System;
  readonly say: Say;
  readonly names: readonly [string, string];
}

function compare(about: Topic, mine: Known | null, theirs: Known | null): Difference {
  const { topic, measure, system, say, names } = about;
  if (!mine || !theirs) {
    const who = !mine && !theirs ? 'either pair' : !mine ? names[0] : names[1];
    return { topic, kind: 'unknown', text: `${topic}: cannot be told for ${who}.` };
  }
  const text = (known: Known) =>
    formatQuantity(known.value, measure, {
      system,
      uncertainty: known.plusMinus,
      decimals: plainDecimals(measure),
      // These stand in brackets already.
    }).text.replace(/^\((.*)\)°$/, '$1°');
  if (!tellable(mine, theirs)) {
    return {
      topic,
      kind: 'none',
      text:
        mine.value === theirs.value
          ? `${topic}: the same (${text(mine)}).`
          : `${topic}: no difference that could be measured (${text(mine)} and ${text(theirs)}).`,
    };
  }
  const apart = formatQuantity(Math.abs(mine.value - theirs.value), measure, {
    system,
    decimals: decimalsOf(text(mine), text(theirs)),
  }).text;
  const predicate = say({ mine: mine.value, theirs: theirs.value, apart });
  return {
    topic,
    kind: 'matters',
    text: `${names[0]} ${predicate} (${text(mine)} against ${text(theirs)}).`,
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
    `${name}: ${verdict}${doubts.length > 0 ? ` (${doubts.join('; ')})` : ''}`;
  const same = one.verdict === other.verdict;
  const none = one.verdict === 'not given' && other.verdict === 'not given';
  return {
    topic: 'Rules',
    kind: none ? 'unknown' : same ? 'none' : 'matters',
    text: none
      ? 'Rules: the edition chosen holds no limits for either pair.'
      : same
        ? `Rules: the same verdict (${one.verdict}), each in its own discipline.`
        : `Rules, each in its own discipline: ${said(one)}. ${said(other)}.`,
  };
}
