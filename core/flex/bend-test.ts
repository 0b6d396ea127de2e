import { accept, FieldError } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import type { Ski } from '../pair/index.ts';
import { type BenchSetup, benchPress } from './bench-press.ts';
import { flatTable } from './flat-table.ts';
import { largeBend } from './large-bend.ts';
import { localWidth } from './local-width.ts';
import { massPerLength } from './mass.ts';
import { endPieces } from './overhang.ts';
import { type Springs, springs } from './springs.ts';
import { bendingOf, torsionOf } from './stiffness.ts';
import { type Mode, type VibrationOptions, vibrate } from './vibration.ts';

/** The question cannot be answered from what the pair file states. */
export interface Needs {
  readonly ok: false;
  readonly needs: Sentence;
}

const NEEDS_BENDING: Needs = { ok: false, needs: { key: 'flex.needsBending' } };
const NEEDS_MASS: Needs = { ok: false, needs: { key: 'flex.needsMass' } };

export interface BendQuestion {
  /** N, each 0 or more. */
  readonly loads?: readonly number[];
  /** Distance of the supports, centred on the contact length, m; the contact length unless given. */
  readonly span?: number;
  /** Where the press stands, m from the rear contact point; the boot centre unless given. */
  readonly at?: number;
}

export interface BendAnswer {
  readonly ok: true;
  readonly name: string;
  /** Load over deflection under the press, on two supports. */
  readonly springNPerMm: number;
  /** Load that brings the whole base within 0.1 mm of a flat table; null when a press there never does. */
  readonly flattenN: number | null;
  readonly firstTouchN: number;
  readonly firstTouchFromTailMm: number;
  /** Gap that stays however hard one presses, and where. */
  readonly gapLeftMm: number;
  readonly gapLeftFromTailMm: number;
  readonly curve: readonly {
    readonly loadN: number;
    readonly deflectionMm: number;
    readonly flatTableDeflectionMm: number;
  }[];
  /** At the last load, on two supports. */
  readonly shape: readonly { readonly fromTailMm: number; readonly deflectionMm: number }[];
  readonly springs: Springs | null;
  /** Whether small-deflection theory still does at the last load. */
  readonly largeBend: Sentence;
}

const ANY_LOAD = { from: 0, quantity: 'force' } as const;

export const DEFAULT_LOADS: readonly number[] = [50, 100, 150, 200, 250, 300];

/** Supports and press as a question puts them, under its last load, SI. Nothing is checked. */
export function benchSetup(ski: Ski, question: BendQuestion): BenchSetup {
  const { loads = DEFAULT_LOADS, span = ski.contactLength, at = ski.bootCentre } = question;
  const length = ski.contactLength;
  return { length, rear: (length - span) / 2, front: (length + span) / 2, at, load: loads[loads.length - 1] };
}

/** Bench and flat-table readings of a ski. Throws FieldError naming the option that cannot be used. */
export function bendTest(ski: Ski, question: BendQuestion = {}): BendAnswer | Needs {
  const { loads = DEFAULT_LOADS, span = ski.contactLength, at = ski.bootCentre } = question;
  const profile = bendingOf(ski);
  if (!profile) return NEEDS_BENDING;
  const length = ski.contactLength;
  if (!(span > 0 && span <= length * (1 + 1e-9))) {
    throw new FieldError({
      field: 'span',
      found: { quantity: 'station', value: span },
      accepted: { above: 0, to: length, quantity: 'station' },
    });
  }
  if (loads.length === 0) throw new FieldError({ field: 'load', found: undefined, accepted: ANY_LOAD });
  for (const load of loads) accept('load', load, ANY_LOAD);
  const setup = benchSetup(ski, question);
  const bench = benchPress(profile, setup);
  const table = flatTable(profile, { length, camber: ski.camber, at });
  return {
    ok: true,
    name: ski.name,
    springNPerMm: bench.spring / 1e3,
    flattenN: table.flatten,
    firstTouchN: table.firstTouch,
    firstTouchFromTailMm: table.firstTouchAt * 1e3,
    gapLeftMm: table.gapLeft * 1e3,
    gapLeftFromTailMm: table.gapLeftAt * 1e3,
    curve: loads.map(loadN => ({
      loadN,
      deflectionMm: (loadN / bench.spring) * 1e3,
      flatTableDeflectionMm: table.press(loadN).loadDeflection * 1e3,
    })),
    shape: Array.from(bench.x, (x, i) => ({ fromTailMm: x * 1e3, deflectionMm: bench.deflection[i] * 1e3 })),
    springs: soleFits(ski) ? springs(profile, { ...ski, length }) : null,
    largeBend: largeBendSentence(() => largeBend(profile, setup).statement),
  };
}

function soleFits({ bootCentre, soleLength, contactLength }: Ski): boolean {
  return bootCentre - soleLength / 2 > 0 && bootCentre + soleLength / 2 < contactLength;
}

function largeBendSentence(ask: () => Sentence): Sentence {
  try {
    return ask();
  } catch (cause) {
    if (cause instanceof FieldError) return { key: 'flex.pastLargeBend' };
    throw cause;
  }
}

export interface VibrationAnswer {
  readonly ok: true;
  readonly name: string;
  readonly modes: readonly Mode[];
}

/** Natural modes of a ski, free or clamped under the boot. */
export function vibrationTest(ski: Ski, options: VibrationOptions = {}): VibrationAnswer | Needs {
  const width = localWidth(ski);
  const bending = bendingOf(ski, width);
  if (!bending) return NEEDS_BENDING;
  const mass = massPerLength(ski, width);
  if (!mass) return NEEDS_MASS;
  const modes = vibrate(
    {
      ...ski,
      length: ski.contactLength,
      bending,
      torsion: torsionOf(ski, width),
      massPerLength: mass,
      width,
      ends: endPieces(ski, mass, width),
    },
    options,
  );
  return { ok: true, name: ski.name, modes };
}
