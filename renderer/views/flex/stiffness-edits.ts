import { type Profile, profileOf } from '../../../core/flex/index.ts';
import type { PlainKey } from '../../../core/language/index.ts';
import type { Pair, PairStiffness } from '../../../core/pair/index.ts';
import { MM } from '../../../core/units/index.ts';
import { changePair, t } from '../../state/index.ts';
import type { Field } from './bench.ts';

const FIELD_TITLES: Record<Field, PlainKey> = {
  bending: 'field.bending',
  torsion: 'field.torsion',
};

/** A round figure to start from where nothing has been measured, N·m². */
export const STARTING: Record<Field, number> = { bending: 200, torsion: 80 };

const STATIONS = 9;
const SAMPLES = 200;

/** The profile read at evenly spaced stations, to 0.1 N·m². */
export function asStations(profile: Profile, lengthMm: number, count = STATIONS): PairStiffness {
  const stations = Array.from({ length: count }, (_, i) => {
    const fromTailMm = Math.round(((lengthMm * i) / (count - 1)) * 10) / 10;
    return { fromTailMm, newtonM2: Math.max(0.1, Math.round(profile(fromTailMm * MM) * 10) / 10) };
  });
  return { kind: 'stations', stations };
}

/** Greatest relative difference between a profile and the stations that would stand for it. */
export function stationsOffBy(profile: Profile, lengthMm: number): number {
  const stated = asStations(profile, lengthMm) as Extract<PairStiffness, { kind: 'stations' }>;
  const length = lengthMm * MM;
  const through = profileOf(
    {
      kind: 'stations',
      stations: stated.stations.map(({ fromTailMm, newtonM2 }) => ({ x: fromTailMm * MM, newtonM2 })),
    },
    length,
  );
  let most = 0;
  for (let i = 0; i <= SAMPLES; i++) {
    const x = (length * i) / SAMPLES;
    most = Math.max(most, Math.abs(through(x) / profile(x) - 1));
  }
  return most;
}

/** One station's value changed; everything else, unknown fields too, stays. */
export function withStation(
  stiffness: Extract<PairStiffness, { kind: 'stations' }>,
  at: number,
  newtonM2: number,
): PairStiffness {
  return {
    ...stiffness,
    stations: stiffness.stations.map((station, i) => (i === at ? { ...station, newtonM2 } : station)),
  };
}

/** One more station in the widest gap, on the profile as it is. */
export function withOneMore(
  stiffness: Extract<PairStiffness, { kind: 'stations' }>,
  profile: Profile,
): PairStiffness {
  const { stations } = stiffness;
  let widest = 0;
  for (let i = 1; i + 1 < stations.length; i++) {
    if (gap(i) > gap(widest)) widest = i;
  }
  const fromTailMm = Math.round(stations[widest].fromTailMm + gap(widest) / 2);
  const newtonM2 = Math.max(0.1, Math.round(profile(fromTailMm * MM) * 10) / 10);
  return {
    ...stiffness,
    stations: [...stations.slice(0, widest + 1), { fromTailMm, newtonM2 }, ...stations.slice(widest + 1)],
  };

  function gap(i: number): number {
    return stations[i + 1].fromTailMm - stations[i].fromTailMm;
  }
}

/**
 * A profile found on the bench put into a pair. The bench bent the ski as it lay there, plate and all: what the plate
 * adds to EI is in the profile, and is no longer added to it.
 */
export function asIdentified(
  { plate }: Pair,
  stations: Extract<PairStiffness, { kind: 'stations' }>['stations'],
): Partial<Pair> {
  const bending: PairStiffness = { kind: 'stations', stations };
  return plate ? { bending, plate: { ...plate, newtonM2: 0 } } : { bending };
}

/** Puts a stiffness into the pair as one undo step; a drag's moves share `key`. */
export function setStiffness(
  id: string,
  field: Field,
  stiffness: PairStiffness,
  key: string | null = null,
): boolean {
  return changePair(id, t(FIELD_TITLES[field]), { [field]: stiffness } as Partial<Pair>, key);
}

/** Puts layers behind each of `fields` as one undo step. */
export function setLayers(
  id: string,
  fields: readonly Field[],
  layup: PairStiffness,
  key: string | null = null,
): boolean {
  const change = Object.fromEntries(fields.map(field => [field, layup])) as Partial<Pair>;
  return changePair(id, t('flex.layers'), change, key);
}
