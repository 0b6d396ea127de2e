import { FieldError, type FieldFault, plainFault } from '../../../core/fault/index.ts';
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
import type { Sentence } from '../../../core/language/index.ts';
import type { Ski } from '../../../core/pair/index.ts';

/** A ski asked about, with the id its answer is known by. */
export interface FlexSki {
  readonly id: string;
  readonly ski: Ski;
}

/** Modes of one ski, or what its file lacks for them. */
export interface Modes {
  readonly id: string;
  readonly clamped: boolean;
  readonly needs: Sentence | null;
  readonly modes: readonly Mode[];
}

/** Load in N against deflection in m, load ascending. */
export interface TableCurve {
  readonly id: string;
  readonly loads: readonly number[];
  readonly deflections: readonly number[];
}

/** The press by large-bend theory; not `ok` past what it can settle. */
export type LargeBendAnswer =
  | {
      readonly ok: true;
      readonly id: string;
      readonly deflection: number;
      readonly offBy: number;
      readonly beyondSmall: boolean;
    }
  | { readonly ok: false; readonly id: string };

export interface IdentifyInput {
  readonly id: string;
  readonly readings: readonly BenchReading[];
  readonly length: number;
  readonly uncertainty: number;
}

export type Identified =
  | {
      readonly ok: true;
      readonly id: string;
      readonly stations: readonly IdentifiedStation[];
      readonly residual: number;
      readonly resolved: number;
      readonly enough: boolean;
      readonly notes: readonly Sentence[];
    }
  | { readonly ok: false; readonly id: string; readonly fault: FieldFault };

/** Bending that takes longer than a frame may. SI; the skis state a bending stiffness. */
export const flexJobs = {
  modes({ skis, clamped }: { readonly skis: readonly FlexSki[]; readonly clamped: boolean }): Modes[] {
    return skis.map(({ id, ski }) => {
      const found = vibrationTest(ski, { clamped, modes: 6 });
      return found.ok
        ? { id, clamped, needs: null, modes: found.modes }
        : { id, clamped, needs: found.needs, modes: [] };
    });
  },

  /** Load against deflection on a flat table up to `most`; closer samples where contact builds up. */
  tableCurves(input: {
    readonly skis: readonly (FlexSki & { readonly setup: BenchSetup })[];
    readonly most: number;
  }): TableCurve[] {
    const { most } = input;
    return input.skis.map(({ id, ski, setup: { at, length } }) => {
      const table = flatTable(bendingOf(ski)!, { length, camber: ski.camber, at });
      const touch = Math.min(most, table.firstTouch);
      const loads = [0, touch];
      for (let share = 1.1; touch > 0 && share * touch < most; share *= 1.25) loads.push(share * touch);
      if (touch < most) loads.push(most);
      return { id, loads, deflections: loads.map(load => table.press(load).loadDeflection) };
    });
  },

  largeBend({ id, ski, setup }: FlexSki & { readonly setup: BenchSetup }): LargeBendAnswer {
    try {
      const { deflection, offBy, beyondSmall } = largeBend(bendingOf(ski)!, setup);
      return { ok: true, id, deflection, offBy, beyondSmall };
    } catch (cause) {
      if (cause instanceof FieldError) return { ok: false, id };
      throw cause;
    }
  },

  identify({ id, readings, length, uncertainty }: IdentifyInput): Identified {
    try {
      const { stations, residual, resolved, enough, notes } = identify(readings, { length, uncertainty });
      return { ok: true, id, stations, residual, resolved, enough, notes };
    } catch (cause) {
      if (cause instanceof FieldError) return { ok: false, id, fault: plainFault(cause) };
      throw cause;
    }
  },
};
