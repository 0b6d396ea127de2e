import { allInWords, inWords, t } from '../../state/index.ts';
import './coach-sheet.css';
import type { JSX } from 'preact';
import type { PlainKey } from '../../../core/language/index.ts';
import { GRAVITY, Phase } from '../../../core/run/index.ts';
import type { MeasureName } from '../../../core/units/index.ts';
import { type Explained, explainedAt, hardestRow, leadRun, weakestRow } from '../../answers/index.ts';
import { Reading } from '../../kit/index.ts';
import { calmClock, pause, seek } from './clock.ts';
import { rowAt } from './skids.ts';

interface Link {
  /** Of its working. */
  readonly key: string;
  readonly label: PlainKey;
  readonly measure: MeasureName;
  value(of: Explained): number;
}

const sideOf = ({ moment }: Explained) => (moment.edge < 0 ? -1 : 1);

/** From the edge angle on, in the order each follows from the one before. */
const LINKS: readonly Link[] = [
  {
    key: 'run.radius',
    label: 'board.turnRadius',
    measure: 'radius',
    value: ({ moment }) => Math.abs(1 / moment.curvature),
  },
  {
    key: 'run.sideways',
    label: 'board.sidewaysPush',
    measure: 'number',
    value: of => (sideOf(of) * of.moment.sideways) / GRAVITY,
  },
  { key: 'run.lean', label: 'board.lean', measure: 'angle', value: of => sideOf(of) * of.moment.lean },
  { key: 'run.hold', label: 'board.grip', measure: 'angle', value: ({ moment }) => moment.hold },
  { key: 'run.load', label: 'condition.load', measure: 'force', value: ({ moment }) => moment.load },
];

/** The coach's chain at the time shown, and what would change its answer. */
export function CoachSheet(): JSX.Element | null {
  const run = leadRun.value;
  if (!run) return null;
  const { track } = run;
  const row = rowAt(track, calmClock.value);
  const explained = explainedAt(run, row);
  const go = (to: number) => () => {
    pause();
    seek(track.t[to]!);
  };
  return (
    <section class="coach" aria-label={t('slope.whyTitle')}>
      <header>
        <h2>{t('slope.atTime', { name: run.pair.name, time: track.t[row]!.toFixed(1) })}</h2>
        <button type="button" onClick={go(weakestRow(track))}>
          {t('slope.goToWeakest')}
        </button>
        <button type="button" onClick={go(hardestRow(track))}>
          {t('slope.goToGreatestLoad')}
        </button>
      </header>
      {explained ? (
        <ChainAndWords explained={explained} slides={track.phase[row] === Phase.Slipping} />
      ) : (
        <NoTurn />
      )}
    </section>
  );
}

function ChainAndWords(props: { readonly explained: Explained; readonly slides: boolean }): JSX.Element {
  const { explained, slides } = props;
  const { words, chain, moment } = explained;
  return (
    <>
      <ol class="chain">
        <li>
          <Reading label={t('condition.edge')} measure="angle" size="small" value={Math.abs(moment.edge)} />
        </li>
        {LINKS.map(link => {
          const upTo = chain.findIndex(each => each.key === link.key);
          return (
            <li key={link.key}>
              <Reading
                label={t(link.label)}
                measure={link.measure}
                size="small"
                value={link.value(explained)}
                note={link.key === 'run.hold' && slides ? t('board.slides') : undefined}
                working={() => chain.slice(0, upTo + 1).reverse()}
              />
            </li>
          );
        })}
      </ol>
      <div class="coach-words">
        <p class="coach-verdict">{inWords(words.verdict)}</p>
        <p>{allInWords(words.stance)}</p>
        {words.changes.length > 0 && <h3>{t('board.whatToChange')}</h3>}
        <ul>
          {words.changes.map(change => (
            <li key={change.key}>{inWords(change)}</li>
          ))}
        </ul>
      </div>
    </>
  );
}

const NoTurn = (): JSX.Element => <p class="reading-hint">{t('slope.noTurnHere')}</p>;
