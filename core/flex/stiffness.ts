import { FieldError, plainFault } from '../fault/index.ts';
import { compileFormula } from '../formula/index.ts';
import type { Sentence } from '../language/index.ts';
import { monotoneCubic } from '../numeric/index.ts';
import type { Ski, Stiffness } from '../pair/index.ts';
import { layupSections } from './layup.ts';
import { localWidth } from './local-width.ts';
import type { Profile } from './profile.ts';
import { withSpan } from './stiff-span.ts';

/** Stations tried along the ski before a profile is let through. */
const SAMPLES = 200;

export interface ProfileOptions {
  /** Which stiffness a layup is asked for, and the field errors name. Bending unless given. */
  readonly field?: 'bending' | 'torsion';
  /** Full width along the ski, m; a layup needs it. */
  readonly width?: Profile;
}

/**
 * The stiffness along a ski of `contactLength` m as a function of x, N·m², held constant outside the contact
 * length. Throws FieldError when it is not a positive finite number somewhere along the ski, and from the
 * profile itself should a formula misbehave between the stations tried.
 */
export function profileOf(
  stiffness: Stiffness,
  contactLength: number,
  { field = 'bending', width }: ProfileOptions = {},
): Profile {
  const profile = rawProfile(stiffness, contactLength, field, width);
  for (let i = 0; i <= SAMPLES; i++) demand(field, profile((contactLength * i) / SAMPLES), i / SAMPLES);
  return profile;
}

function rawProfile(
  stiffness: Stiffness,
  length: number,
  field: 'bending' | 'torsion',
  width: Profile | undefined,
): Profile {
  switch (stiffness.kind) {
    case 'uniform': {
      const value = stiffness.newtonM2;
      return () => value;
    }
    case 'stations': {
      const { stations } = stiffness;
      const bad = stations.findIndex(
        ({ x, newtonM2 }, i) => !Number.isFinite(newtonM2) || !(x > (stations[i - 1]?.x ?? -Infinity)),
      );
      if (bad >= 0 || stations.length === 0) {
        throw new FieldError({
          field: `${field}.stations${bad < 0 ? '' : `[${bad}]`}`,
          found: bad < 0 ? { key: 'found.emptyList' } : stiffnessAt(stations[bad].newtonM2, stations[bad].x),
          accepted: { key: 'flex.ascendingStations' },
        });
      }
      return monotoneCubic(
        stations.map(station => station.x),
        stations.map(station => station.newtonM2),
      );
    }
    case 'formula': {
      const f = formulaOf(stiffness.newtonM2, `${field}.newtonM2`);
      return x => {
        const s = x <= 0 ? 0 : x >= length ? 1 : x / length;
        const value = f(s);
        if (value > 0 && value < Infinity) return value;
        return demand(`${field}.newtonM2`, value, s);
      };
    }
    case 'layup': {
      if (!width)
        throw new FieldError({
          field,
          found: { key: 'flex.layupWithoutWidth' },
          accepted: { key: 'flex.layupWithWidth' },
        });
      const section = layupSections(stiffness.layup, width);
      return x => section(Math.min(Math.max(x, 0), length))[field];
    }
  }
}

/** A formula in s: 0 at the rear contact point, 1 at the front. */
function formulaOf(text: string, field: string): (s: number) => number {
  try {
    return compileFormula(text, 's');
  } catch (cause) {
    throw cause instanceof FieldError ? new FieldError(plainFault(cause, { field })) : cause;
  }
}

function demand(field: string, value: number, s: number): number {
  if (value > 0 && value < Infinity) return value;
  throw new FieldError({
    field,
    found: { key: 'flex.stiffnessAtShare', values: { stiffness: `${value} N·m²`, share: s } },
    accepted: { key: 'flex.positiveAllAlong' },
  });
}

const stiffnessAt = (newtonM2: number, x: number): Sentence => ({
  key: 'flex.stiffnessAt',
  values: { stiffness: `${newtonM2} N·m²`, at: { quantity: 'station', value: x } },
});

/**
 * EI(x) of the bare ski as its file states it, or null when it states none. A layup uses `width`, the local width
 * by default.
 */
export function bareBendingOf(ski: Ski, width: Profile = localWidth(ski)): Profile | null {
  return ski.bending && profileOf(ski.bending, ski.contactLength, { field: 'bending', width });
}

/** GJ(x) of the bare ski as its file states it, or null when it is rigid in torsion. */
export function bareTorsionOf(ski: Ski, width: Profile = localWidth(ski)): Profile | null {
  return ski.torsion && profileOf(ski.torsion, ski.contactLength, { field: 'torsion', width });
}

/** EI(x) of a ski with its plate, as it lies on a bench; null when its file states no bending. */
export function bendingOf(ski: Ski, width?: Profile): Profile | null {
  const bare = bareBendingOf(ski, width);
  const { plate } = ski;
  return bare && plate ? withSpan(bare, { ...plate, newtonM2: plate.bending }) : bare;
}

/** EI(x) of a ski with its plate and a boot in the binding, as it is skied; null when its file states no bending. */
export function bootedBendingOf(ski: Ski, width?: Profile): Profile | null {
  const mounted = bendingOf(ski, width);
  const { bootCentre, soleLength, soleBending = 0 } = ski;
  return (
    mounted &&
    withSpan(mounted, {
      from: bootCentre - soleLength / 2,
      to: bootCentre + soleLength / 2,
      newtonM2: soleBending,
    })
  );
}

/** GJ(x) of a ski with its plate, or null when it is rigid in torsion. */
export function torsionOf(ski: Ski, width?: Profile): Profile | null {
  const bare = bareTorsionOf(ski, width);
  const { plate } = ski;
  return bare && plate ? withSpan(bare, { ...plate, newtonM2: plate.torsion }) : bare;
}
