import { FieldError } from '../../core/fault/index.ts';
import {
  type BenchResult,
  bareBendingOf,
  bareTorsionOf,
  benchPress,
  bendingOf,
  type FlatTable,
  flatTable,
  type Profile,
  torsionOf,
} from '../../core/flex/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { type ChosenPair, inWords, perPair, ski } from '../state/index.ts';

/** A pair's two stiffness profiles: null where its file states none, with what is wrong where it does. */
export interface Beam {
  readonly bending: Profile | null;
  readonly torsion: Profile | null;
  readonly bendingFault: string | null;
  readonly torsionFault: string | null;
  /** The same without the plate, which is what the file's own `bending` and `torsion` state. */
  readonly bare: { readonly bending: Profile | null; readonly torsion: Profile | null };
}

export const beamOf = perPair((pair): Beam => {
  const one = (ask: (ski: Ski) => Profile | null): [Profile | null, string | null] => {
    try {
      return [ask(ski(pair)), null];
    } catch (cause) {
      if (cause instanceof FieldError) return [null, inWords(cause)];
      throw cause;
    }
  };
  const [bending, bendingFault] = one(bendingOf);
  const [torsion, torsionFault] = one(torsionOf);
  const bare = { bending: one(bareBendingOf)[0], torsion: one(bareTorsionOf)[0] };
  return { bending, torsion, bendingFault, torsionFault, bare };
});

/** A chosen pair that can be bent. */
export interface Bendable extends ChosenPair {
  readonly bending: Profile;
}

export function bendable(pairs: readonly ChosenPair[]): Bendable[] {
  return pairs.flatMap(pair => {
    const { bending } = beamOf(pair.pair);
    return bending ? [{ ...pair, bending }] : [];
  });
}

/** Remembers the last answer per pair: dragging the load asks for the same beam again and again. */
function lastPerPair<T>(): (pair: Bendable, key: string, make: () => T) => T {
  const slots = perPair((): { key: string; value: T | null } => ({ key: '', value: null }));
  return (pair, key, make) => {
    const slot = slots(pair.pair);
    if (slot.key !== key || slot.value === null) {
      slot.value = make();
      slot.key = key;
    }
    return slot.value;
  };
}

const benches = lastPerPair<BenchResult>();
const tables = lastPerPair<FlatTable>();

/** The ski on two supports under 1 N; deflections are proportional to the load. */
export function unitBench(pair: Bendable, rear: number, front: number, at: number): BenchResult {
  return benches(pair, `${rear} ${front} ${at}`, () =>
    benchPress(pair.bending, { length: pair.ski.contactLength, rear, front, at, load: 1 }),
  );
}

export function flatTableOf(pair: Bendable, at: number): FlatTable {
  return tables(pair, `${at}`, () =>
    flatTable(pair.bending, { length: pair.ski.contactLength, camber: pair.ski.camber, at }),
  );
}
