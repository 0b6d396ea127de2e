import type { Working } from '../../../core/working/index.ts';
import type { PairRun } from '../../answers/index.ts';

const BOOK = 'where the energy of the run went, from the equations of motion';

/** Speed at the end, from what the hill gave and what was lost on the way. */
export function endSpeedWorking({ plan, track }: PairRun): Working {
  const last = track.t.length - 1;
  const { drop, swing, legs, friction, drag, scrape } = track.energy;
  return {
    key: 'run.endSpeed',
    title: 'Speed at the end',
    symbol: 'v',
    tex: 'v = \\sqrt{v_0^2 + \\tfrac{2}{m}(E_{drop} + W_{legs} - W_\\mu - W_D - W_{scrape} - E_{swing})}',
    formula: 'sqrt(max(0, v_0^2 + 2 / m * (E_drop + W_legs - W_mu - W_D - W_scrape - E_swing)))',
    inputs: [
      { name: 'v_0', symbol: 'v_0', meaning: 'speed at the start', value: plan.startSpeed, unit: 'm/s' },
      { name: 'm', symbol: 'm', meaning: 'skier with equipment', value: plan.mass, unit: 'kg' },
      energy('E_drop', 'E_{drop}', 'given by the hill', drop[last]!),
      energy('W_mu', 'W_\\mu', 'lost to friction', friction[last]!),
      energy('W_D', 'W_D', 'lost to the air', drag[last]!),
      energy('W_scrape', 'W_{scrape}', 'lost to scraping edges', scrape[last]!),
      energy('W_legs', 'W_{legs}', 'given by the legs', legs[last]!),
      energy('E_swing', 'E_{swing}', 'gained in the swing across and up', swing[last]!),
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
    title: 'Energy left unaccounted for',
    symbol: '\\Delta E',
    tex: '\\Delta E = E_{drop} + W_{legs} - \\Delta E_{kin} - W_\\mu - W_D - W_{scrape}',
    formula: 'E_drop + W_legs - E_kin - W_mu - W_D - W_scrape',
    inputs: [
      energy('E_drop', 'E_{drop}', 'given by the hill', drop[last]!),
      energy('E_kin', '\\Delta E_{kin}', 'gained in speed and swing', kinetic[last]!),
      energy('W_mu', 'W_\\mu', 'lost to friction', friction[last]!),
      energy('W_D', 'W_D', 'lost to the air', drag[last]!),
      energy('W_scrape', 'W_{scrape}', 'lost to scraping edges', scrape[last]!),
      energy('W_legs', 'W_{legs}', 'given by the legs', legs[last]!),
    ],
    result: { value: left, unit: 'J' },
    note: 'Nothing is lost unaccounted for: what is left over is the error of following the equations in steps.',
    source: BOOK,
    status: 'derived',
  };
}

function energy(name: string, symbol: string, meaning: string, value: number) {
  return { name, symbol, meaning, value, unit: 'J' };
}
