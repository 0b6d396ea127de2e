import type { PlainKey, Quantity, Sentence, Value } from '../language/index.ts';
import type { Gate } from './gates.ts';

/**
 * A course against the rules of course setting. Only what a list of turning poles and a drop can show is
 * checked; values keep how well they are established.
 */

export type SettingStatus = 'seen' | 'from memory';

export interface SettingItem {
  readonly rule: { readonly key: PlainKey };
  readonly limit: readonly Sentence[];
  /** What was found: one value, or the least and the greatest; null when the course does not tell. */
  readonly found: readonly Value[] | null;
  readonly verdict: 'passes' | 'fails' | 'not given';
  /** Labels of the gates concerned. */
  readonly gates: readonly string[];
  readonly status: SettingStatus;
}

export interface SettingCheck {
  readonly edition: Sentence;
  readonly verdict: 'passes' | 'fails' | 'not given';
  readonly items: readonly SettingItem[];
  readonly caution: Sentence;
}

export interface SettingOptions {
  readonly discipline: 'SL' | 'GS';
  readonly category: 'men' | 'women' | 'children';
  /** Slope angle, rad: turns distances down the slope into drop. */
  readonly slope: number;
  /** Drop from start to finish, m; that of the gates with one spacing above and below unless given. */
  readonly drop?: number;
  /** Width of the gates, m, one for all. */
  readonly gateWidth?: number;
}

/** Checks gate count against drop, pole distances, slope, drop and gate width. */
export function checkSetting(gates: readonly Gate[], options: SettingOptions): SettingCheck {
  const items = options.discipline === 'SL' ? slalomItems(gates, options) : giantSlalomItems(gates, options);
  const judged = items.filter(item => item.verdict !== 'not given');
  return {
    edition: { key: 'course.settingEdition' },
    verdict: judged.some(item => item.verdict === 'fails')
      ? 'fails'
      : judged.length > 0
        ? 'passes'
        : 'not given',
    items,
    caution: { key: 'course.settingCaution' },
  };
}

/** The drop the gates and one spacing above and below them take, m. */
function courseDrop(gates: readonly Gate[], slope: number): number {
  if (gates.length < 2) return 0;
  const down = gates[gates.length - 1].y - gates[0].y;
  return (down + (2 * down) / (gates.length - 1)) * Math.sin(slope);
}

function slalomItems(gates: readonly Gate[], options: SettingOptions): SettingItem[] {
  const drop = options.drop ?? courseDrop(gates, options.slope);
  const children = options.category === 'children';
  return [
    countItem(gates, drop, 0.3, 0.35, 'seen'),
    distanceItem(gates, 'course.turningPoles', children ? 7 : 6, children ? 11 : 13, 'from memory'),
    slopeItem(options.slope),
    widthItem(options.gateWidth ?? null, 4, 6),
    ...(children ? [] : [dropItem(drop, options.category === 'men' ? [180, 220] : [140, 220])]),
  ];
}

function giantSlalomItems(gates: readonly Gate[], options: SettingOptions): SettingItem[] {
  const drop = options.drop ?? courseDrop(gates, options.slope);
  const children = options.category === 'children';
  return [
    countItem(gates, drop, 0.11, 0.15, 'seen', 0),
    distanceItem(gates, 'course.nearestPoles', 10, Number.POSITIVE_INFINITY, 'seen'),
    ...(children ? [distanceItem(gates, 'course.turningPoles', 0, 27, 'seen')] : []),
    widthItem(options.gateWidth ?? null, 4, 8),
    ...(children ? [] : [dropItem(drop, options.category === 'men' ? [250, 450] : [250, 400])]),
  ];
}

/** Direction changes as a share of the drop in metres, with ± 3 turns of grace in slalom. */
function countItem(
  gates: readonly Gate[],
  drop: number,
  from: number,
  to: number,
  status: SettingStatus,
  grace = 3,
): SettingItem {
  const least = Math.max(0, Math.ceil(from * drop - grace - 1e-9));
  const most = Math.floor(to * drop + grace + 1e-9);
  const shares = {
    least,
    most,
    from: { quantity: 'share', value: from, bare: true },
    to: { quantity: 'share', value: to },
    drop: metres(drop),
  } as const;
  return {
    rule: { key: 'course.directionChanges' },
    limit: [
      grace > 0
        ? { key: 'course.countLimitWithGrace', values: { ...shares, grace } }
        : { key: 'course.countLimit', values: shares },
    ],
    found: [{ key: 'course.turns', values: { count: gates.length } }],
    verdict: gates.length >= least && gates.length <= most ? 'passes' : 'fails',
    gates: [],
    status,
  };
}

function distanceItem(
  gates: readonly Gate[],
  rule: PlainKey,
  least: number,
  most: number,
  status: SettingStatus,
): SettingItem {
  const limit: Sentence[] = [
    ...(least > 0 ? [{ key: 'course.atLeast', values: { least: metres(least) } } as const] : []),
    ...(most < 1e9 ? [{ key: 'course.atMost', values: { most: metres(most) } } as const] : []),
  ];
  const item = { rule: { key: rule }, limit, status };
  if (gates.length < 2) return { ...item, found: null, verdict: 'not given', gates: [] };
  let shortest = Number.POSITIVE_INFINITY;
  let longest = 0;
  const concerned: string[] = [];
  for (let i = 1; i < gates.length; i++) {
    const distance = Math.hypot(gates[i].x - gates[i - 1].x, gates[i].y - gates[i - 1].y);
    shortest = Math.min(shortest, distance);
    longest = Math.max(longest, distance);
    if (distance < least - 1e-9 || distance > most + 1e-9) {
      concerned.push(`${gates[i - 1].label}–${gates[i].label}`);
    }
  }
  return {
    ...item,
    found: [exactMetres(shortest), exactMetres(longest)],
    verdict: concerned.length === 0 ? 'passes' : 'fails',
    gates: concerned,
  };
}

const dropItem = (drop: number, [least, most]: readonly [number, number]): SettingItem =>
  single('course.drop', drop, metres(drop), least, most, rangeOf(metres, least, most));

const widthItem = (width: number | null, least: number, most: number): SettingItem =>
  single('course.gateWidth', width, exactMetres(width ?? 0), least, most, rangeOf(metres, least, most));

/** Gradients are stated in per cent, about: one more either way passes. */
function slopeItem(slope: number): SettingItem {
  const gradient = Math.tan(slope);
  const share = (value: number): Quantity => ({ quantity: 'share', value });
  const limit: Sentence = { key: 'course.aboutFrom', values: { from: bare(share(0.33)), to: share(0.45) } };
  return single('course.slope', gradient, share(gradient), 0.32, 0.46, limit);
}

function single(
  rule: PlainKey,
  found: number | null,
  shown: Quantity,
  least: number,
  most: number,
  limit: Sentence,
): SettingItem {
  const within = found !== null && found >= least - 1e-9 && found <= most + 1e-9;
  return {
    rule: { key: rule },
    limit: [limit],
    found: found === null ? null : [shown],
    verdict: found === null ? 'not given' : within ? 'passes' : 'fails',
    gates: [],
    status: 'seen',
  };
}

const rangeOf = (shown: (value: number) => Quantity, from: number, to: number): Sentence => ({
  key: 'course.from',
  values: { from: bare(shown(from)), to: shown(to) },
});

const bare = (quantity: Quantity): Quantity => ({ ...quantity, bare: true });
const metres = (value: number): Quantity => ({ quantity: 'distance', value, decimals: 0 });
const exactMetres = (value: number): Quantity => ({ quantity: 'distance', value });
