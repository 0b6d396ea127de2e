import './controls.css';
import type { JSX } from 'preact';
import { terminalSpeedWorking } from '../../../core/run/index.ts';
import {
  groundOf,
  hardestRow,
  leadPair,
  leadRun,
  leastGrip,
  type PairRun,
  runs,
  turnSource,
  weakestRow,
} from '../../answers/index.ts';
import { ConditionControl, PresetChoice } from '../../controls/index.ts';
import { PairReadings, Reading } from '../../kit/index.ts';
import { conditions, inWords, slope, t } from '../../state/index.ts';
import { GhostChoice } from './ghost-choice.tsx';
import { HillControls } from './hill-controls.tsx';
import { RhythmReadings } from './rhythm-readings.tsx';
import { holdWorking, loadWorking } from './row-workings.ts';
import { bookWorking, endSpeedWorking } from './run-workings.ts';
import { airWords, skidWords, stretchesOf } from './skids.ts';
import { SkierControls } from './skier-controls.tsx';
import { SnowControls } from './snow-controls.tsx';
import { TurnControls } from './turn-controls.tsx';

export function SlopeReadings(): JSX.Element | null {
  const lead = leadPair.value;
  if (!lead) return null;
  const found = runs.value.runs;
  const rhythmic = slope.value.programme === 'rhythm';
  const source = turnSource(lead, conditions.value.hardnessNPerMm3);
  return (
    <>
      <div class="slope-controls">
        <PresetChoice />
        <GhostChoice />
        <TurnControls />
        {!rhythmic && <ConditionControl field="speedKmh" />}
        <HillControls />
        <SnowControls />
        <SkierControls />
      </div>
      <p class="reading-hint">
        {t('common.says', { name: lead.name, what: inWords(source.words) })}
        {runs.value.draft && ` ${t('slope.firstLook')}`}
      </p>
      {found.length > 0 && (found[0]!.rhythm ? <RhythmReadings found={found} /> : <Summary found={found} />)}
    </>
  );
}

const rowOf = (run: PairRun) => ({ id: run.pair.id, mark: run.pair.mark, of: run.pair.name });

/** The whole run in a few numbers, each with how it came about. */
function Summary({ found }: { found: readonly PairRun[] }): JSX.Element {
  const lead = leadRun.value!;
  const { summary } = lead.track;
  const activeId = lead.pair.id;
  return (
    <>
      <PairReadings
        label={t('slope.greatestLoad')}
        measure="bodyWeights"
        activeId={activeId}
        rows={found.map(run => ({
          ...rowOf(run),
          value: run.track.summary.maxLoadBodyWeights,
          working: () => loadWorking(run, hardestRow(run.track)),
        }))}
      />
      <PairReadings
        label={t('slope.leastGrip')}
        measure="angle"
        activeId={activeId}
        rows={found.map(run => ({
          ...rowOf(run),
          value: leastGrip(run.track),
          why: t('slope.onNoEdge'),
          note: run === lead ? t('slope.judgedPast') : undefined,
          working: () => holdWorking(run, weakestRow(run.track)),
        }))}
      />
      <PairReadings
        label={t('run.title.endSpeed')}
        measure="speed"
        activeId={activeId}
        rows={found.map(run => ({
          ...rowOf(run),
          value: run.track.summary.endSpeed,
          working: () => [endSpeedWorking(run), straightWorking(run)],
        }))}
      />
      <PairReadings
        label={t('slope.timeSliding')}
        measure="time"
        activeId={activeId}
        rows={found.map(run => ({
          ...rowOf(run),
          value: run.track.summary.skidSeconds,
          decimals: 1,
          note: run === lead ? skidWords(stretchesOf(run.track)) : undefined,
        }))}
      />
      {found.some(run => run.track.summary.airSeconds > 0) && (
        <PairReadings
          label={t('slope.timeInAir')}
          measure="time"
          activeId={activeId}
          rows={found.map(run => ({
            ...rowOf(run),
            value: run.track.summary.airSeconds,
            note: run === lead ? airWords(run.track) : undefined,
          }))}
        />
      )}
      <section class="reading-group">
        <h2>{t('slope.runOf', { name: lead.pair.name })}</h2>
        <Reading
          label={t('slope.duration')}
          measure="time"
          size="small"
          decimals={1}
          value={summary.seconds}
        />
        <Reading label={t('slope.trackLength')} measure="distance" size="small" value={summary.distance} />
        <Reading label={t('slope.drop')} measure="distance" size="small" value={summary.drop} />
        <Reading
          label={t('slope.energyUnaccounted')}
          measure="energy"
          size="small"
          decimals={3}
          value={bookWorking(lead).result.value}
          working={() => bookWorking(lead)}
        />
        {summary.end !== 'programme over' && (
          <p class="reading-hint">{t('slope.ended', { how: t(`slope.end.${summary.end}`) })}</p>
        )}
      </section>
    </>
  );
}

function straightWorking(run: PairRun) {
  const { mass, friction, dragArea, airDensity, ground } = run.plan;
  const angle = Math.asin(groundOf(ground).sine(run.track.y.at(-1)!));
  return terminalSpeedWorking({ mass, friction, dragArea, airDensity, slope: angle });
}
