import { expose } from 'comlink';
import {
  type BenchReading,
  type BenchSetup,
  bendingOf,
  flatTable,
  type IdentifiedStation,
  identify,
  largeBend,
  type Mode,
  vibrationTest,
} from '../../../core/flex/index.ts';
import type { Ski } from '../../../core/pair/index.ts';

/** Modes of one ski, or what its file lacks for them. */
export interface Modes {
  readonly needs: string | null;
  readonly modes: readonly Mode[];
}

export interface TableCurve {
  readonly loads: readonly number[];
  readonly deflections: readonly number[];
}

export type Identified =
  | {
      readonly ok: true;
      readonly stations: readonly IdentifiedStation[];
      readonly residual: number;
      readonly told: number;
      readonly enough: boolean;
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly problem: string };

/** Work that takes longer than a frame may. Skis and answers cross as plain data. */
const jobs = {
  modes(skis: readonly Ski[], clamped: boolean): Modes[] {
    return skis.map(ski => {
      const found = vibrationTest(ski, { clamped, modes: 6 });
      return found.ok ? { needs: null, modes: found.modes } : { needs: found.needs, modes: [] };
    });
  },

  /** Load against deflection on a flat table; closer samples where contact builds up. */
  tableCurves(skis: readonly Ski[], setups: readonly BenchSetup[], most: number): TableCurve[] {
    return skis.map((ski, i) => {
      const { at, length } = setups[i];
      const table = flatTable(bendingOf(ski)!, { length, camber: ski.camber, at });
      const touch = Math.min(most, table.firstTouch);
      const loads = [0, touch];
      for (let share = 1.1; touch > 0 && share * touch < most; share *= 1.25) loads.push(share * touch);
      if (touch < most) loads.push(most);
      return { loads, deflections: loads.map(load => table.press(load).loadDeflection) };
    });
  },

  /** The same press by large-bend theory; null past what it can settle. */
  large(ski: Ski, setup: BenchSetup): { deflection: number; offBy: number; beyondSmall: boolean } | null {
    try {
      const { deflection, offBy, beyondSmall } = largeBend(bendingOf(ski)!, setup);
      return { deflection, offBy, beyondSmall };
    } catch (cause) {
      if (cause instanceof RangeError) return null;
      throw cause;
    }
  },

  identify(readings: readonly BenchReading[], length: number, uncertainty: number): Identified {
    try {
      const { stations, residual, told, enough, notes } = identify(readings, { length, uncertainty });
      return { ok: true, stations, residual, told, enough, notes };
    } catch (cause) {
      if (cause instanceof RangeError) return { ok: false, problem: cause.message };
      throw cause;
    }
  },
};

export type Jobs = typeof jobs;

expose(jobs);
