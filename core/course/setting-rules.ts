import type { Gate } from './gates.ts';

/**
 * A course against the rules of course setting. Only what a list of turning poles and a drop can show is
 * checked; values keep how well they are established.
 */

export type SettingStatus = 'seen' | 'from memory';

export interface SettingItem {
  readonly rule: string;
  readonly limit: string;
  /** Least and greatest value found, in `unit`; null when the course does not tell. */
  readonly found: readonly [number, number] | null;
  readonly unit: string;
  readonly verdict: 'passes' | 'fails' | 'not given';
  /** Labels of the gates concerned. */
  readonly gates: readonly string[];
  readonly status: SettingStatus;
}

export interface SettingCheck {
  readonly edition: string;
  readonly verdict: 'passes' | 'fails' | 'not given';
  readonly items: readonly SettingItem[];
  readonly caution: string;
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

const edition = 'International competition rules as known to this program';

/** Checks gate count against drop, pole distances, slope, drop and gate width. */
export function checkSetting(gates: readonly Gate[], options: SettingOptions): SettingCheck {
  const items = options.discipline === 'SL' ? slalomItems(gates, options) : giantSlalomItems(gates, options);
  const judged = items.filter(item => item.verdict !== 'not given');
  return {
    edition,
    verdict: judged.some(item => item.verdict === 'fails')
      ? 'fails'
      : judged.length > 0
        ? 'passes'
        : 'not given',
    items,
    caution:
      'Rules change every season and editions differ; limits marked from memory must be confirmed. Only the ' +
      'rulebook in force and the jury decide. A rule not listed here is not checked.',
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
  const gradient = 100 * Math.tan(options.slope);
  const children = options.category === 'children';
  return [
    countItem(gates, drop, 0.3, 0.35, 'seen'),
    distanceItem(gates, 'turning pole to turning pole', children ? 7 : 6, children ? 11 : 13, 'from memory'),
    single('slope', gradient, '%', 33, 45, 'seen', 'about 33 to 45 %', 1),
    single('gate width', options.gateWidth ?? null, 'm', 4, 6, 'seen'),
    ...(children ? [] : [dropItem(drop, options.category === 'men' ? [180, 220] : [140, 220])]),
  ];
}

function giantSlalomItems(gates: readonly Gate[], options: SettingOptions): SettingItem[] {
  const drop = options.drop ?? courseDrop(gates, options.slope);
  const children = options.category === 'children';
  return [
    countItem(gates, drop, 0.11, 0.15, 'seen', 0),
    distanceItem(gates, 'nearest poles of successive gates', 10, Number.POSITIVE_INFINITY, 'seen'),
    ...(children ? [distanceItem(gates, 'turning pole to turning pole', 0, 27, 'seen')] : []),
    single('gate width', options.gateWidth ?? null, 'm', 4, 8, 'seen'),
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
  const share = `${Math.round(100 * from)} to ${Math.round(100 * to)} % of the drop`;
  return {
    rule: 'direction changes',
    limit: `${least} to ${most} (${share}${grace > 0 ? ` ± ${grace}` : ''}, ${drop.toFixed(0)} m)`,
    found: [gates.length, gates.length],
    unit: 'turns',
    verdict: gates.length >= least && gates.length <= most ? 'passes' : 'fails',
    gates: [],
    status,
  };
}

function distanceItem(
  gates: readonly Gate[],
  rule: string,
  least: number,
  most: number,
  status: SettingStatus,
): SettingItem {
  const bounds = [
    ...(least > 0 ? [`at least ${least} m`] : []),
    ...(most < 1e9 ? [`at most ${most} m`] : []),
  ];
  const item = { rule, limit: bounds.join(', '), unit: 'm', status };
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
    found: [shortest, longest],
    verdict: concerned.length === 0 ? 'passes' : 'fails',
    gates: concerned,
  };
}

function dropItem(drop: number, [least, most]: readonly [number, number]): SettingItem {
  return single('drop, top level', drop, 'm', least, most, 'seen');
}

function single(
  rule: string,
  found: number | null,
  unit: string,
  least: number,
  most: number,
  status: SettingStatus,
  limit = `${least} to ${most} ${unit}`,
  grace = 0,
): SettingItem {
  const within = found !== null && found >= least - grace - 1e-9 && found <= most + grace + 1e-9;
  return {
    rule,
    limit,
    found: found === null ? null : [found, found],
    unit,
    verdict: found === null ? 'not given' : within ? 'passes' : 'fails',
    gates: [],
    status,
  };
}
