import type { PlainKey } from '../../../core/language/index.ts';
import { input, type Working } from '../../../core/working/index.ts';
import type { PairRun } from '../../answers/index.ts';

const BOOK = { key: 'source.energyBook' } as const;

/** Speed at the end, from what the hill gave and what was lost on the way. */
export function endSpeedWorking({ plan, track }: PairRun): Working {
  const last = track.t.length - 1;
  const { drop, swing, legs, friction, drag, scrape } = track.energy;
  return {
    key: 'run.endSpeed',
    title: { key: 'run.title.endSpeed' },
    symbol: 'v',
    tex: 'v = \\sqrt{v_0^2 + \\tfrac{2}{m}(E_{drop} + W_{legs} - W_\\mu - W_D - W_{scrape} - E_{swing})}',
    formula: 'sqrt(max(0, v_0^2 + 2 / m * (E_drop + W_legs - W_mu - W_D - W_scrape - E_swing)))',
    inputs: [
      input('v_0', 'v_0', 'run.startSpeed', plan.startSpeed, 'm/s'),
      input('m', 'm', 'working.skierMass', plan.mass, 'kg'),
      energy('E_drop', 'E_{drop}', 'run.hillGave', drop[last]!),
      energy('W_mu', 'W_\\mu', 'run.frictionTook', friction[last]!),
      energy('W_D', 'W_D', 'run.airTook', drag[last]!),
      energy('W_scrape', 'W_{scrape}', 'run.scrapeTook', scrape[last]!),
      energy('W_legs', 'W_{legs}', 'run.legsGave', legs[last]!),
      energy('E_swing', 'E_{swing}', 'run.swingGained', swing[last]!),
    ],
    result: { value: track.summary.endSpeed, unit: 'm/s' },
    source: BOOK,
    status: 'derived',
  };
}

/** How far the book fails to close. */
export function bookWorking({ track }: PairRun): Working {
  const last = track.t.length - 1;
  const { drop, kinetic, legs, friction, drag, scrape } = track.energy;
  const left = drop[last]! + legs[last]! - kinetic[last]! - friction[last]! - drag[last]! - scrape[last]!;
  return {
    key: 'run.energyBook',
    title: { key: 'run.title.energyBook' },
    symbol: '\\Delta E',
    tex: '\\Delta E = E_{drop} + W_{legs} - \\Delta E_{kin} - W_\\mu - W_D - W_{scrape}',
    formula: 'E_drop + W_legs - E_kin - W_mu - W_D - W_scrape',
    inputs: [
      energy('E_drop', 'E_{drop}', 'run.hillGave', drop[last]!),
      energy('E_kin', '\\Delta E_{kin}', 'run.speedGained', kinetic[last]!),
      energy('W_mu', 'W_\\mu', 'run.frictionTook', friction[last]!),
      energy('W_D', 'W_D', 'run.airTook', drag[last]!),
      energy('W_scrape', 'W_{scrape}', 'run.scrapeTook', scrape[last]!),
      energy('W_legs', 'W_{legs}', 'run.legsGave', legs[last]!),
    ],
    result: { value: left, unit: 'J' },
    note: { key: 'run.note.energyBook' },
    source: BOOK,
    status: 'derived',
  };
}

function energy(name: string, symbol: string, meaning: PlainKey, value: number) {
  return input(name, symbol, meaning, value, 'J');
}
