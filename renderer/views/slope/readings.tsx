import './controls.css';
import type { JSX } from 'preact';
import { terminalSpeedWorking } from '../../../core/run/index.ts';
import { PairReadings, Quantity, Reading } from '../../kit/index.ts';
import { changeConditions, conditions } from '../../state/index.ts';
import { GhostChoice } from './ghost-choice.tsx';
import { HillControls } from './hill-controls.tsx';
import { hardestRow, leastHoldRow, questionAt } from './moment.ts';
import { holdWorking, loadWorking } from './row-workings.ts';
import { bookWorking, endSpeedWorking } from './run-workings.ts';
import { leadRun, type PairRun, runs, turnSource } from './runs.ts';
import { leadPair } from './settings.ts';
import { skidWords, stretchesOf } from './skids.ts';
import { SkierControls } from './skier-controls.tsx';
import { TurnControls } from './turn-controls.tsx';

export function SlopeReadings(): JSX.Element | null {
  const lead = leadPair.value;
  if (!lead) return null;
  const found = runs.value.runs;
  const source = turnSource(lead, conditions.value.hardnessNPerMm3);
  return (
    <>
      <div class="slope-controls">
        <GhostChoice />
        <TurnControls />
        <Quantity
          label="Start speed"
          measure="speedKmh"
          value={conditions.value.speedKmh}
          min={5}
          max={130}
          step={1}
          onInput={speedKmh => changeConditions('Start speed', { speedKmh }, 'speedKmh')}
        />
        <HillControls />
        <SkierControls />
      </div>
      <p class="reading-hint">
        {lead.name} {source.words}.
      </p>
      {found.length > 0 && <Summary found={found} />}
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
        label="Greatest load"
        measure="bodyWeights"
        activeId={activeId}
        rows={found.map(run => ({
          ...rowOf(run),
          value: run.track.summary.maxLoadBodyWeights,
          working: () => loadWorking(run, hardestRow(run.track)),
        }))}
      />
      <PairReadings
        label="Least hold under the boot"
        measure="angle"
        activeId={activeId}
        rows={found.map(run => {
          const least = run.track.summary.minHold;
          return {
            ...rowOf(run),
            value: Number.isFinite(least) ? least : null,
            why: 'The ski was on no edge.',
            note: least < 0 ? 'below zero: it slides' : undefined,
            working: () => holdWorking(run, leastHoldRow(run.track)),
          };
        })}
      />
      <PairReadings
        label="Speed at the end"
        measure="speed"
        activeId={activeId}
        rows={found.map(run => ({
          ...rowOf(run),
          value: run.track.summary.endSpeed,
          working: () => [endSpeedWorking(run), straightWorking(run)],
        }))}
      />
      <PairReadings
        label="Time sliding"
        measure="time"
        activeId={activeId}
        rows={found.map(run => ({
          ...rowOf(run),
          value: run.track.summary.skidSeconds,
          decimals: 1,
          note: run === lead ? skidWords(stretchesOf(run.track)) : undefined,
        }))}
      />
      <section class="reading-group">
        <h2>The run of {lead.pair.name}</h2>
        <Reading label="Lasts" measure="time" size="small" decimals={1} value={summary.seconds} />
        <Reading label="Length of the track" measure="distance" size="small" value={summary.distance} />
        <Reading label="Drop" measure="distance" size="small" value={summary.drop} />
        <Reading
          label="Energy left over"
          measure="energy"
          size="small"
          decimals={3}
          value={bookWorking(lead).result.value}
          working={() => bookWorking(lead)}
        />
        {summary.end !== 'programme over' && <p class="reading-hint">Ended: {summary.end}.</p>}
      </section>
    </>
  );
}

function straightWorking(run: PairRun) {
  const { slope } = questionAt(run, run.track.t.length - 1);
  const { mass, friction, dragArea, airDensity } = run.plan;
  return terminalSpeedWorking({ mass, friction, dragArea, airDensity, slope });
}
