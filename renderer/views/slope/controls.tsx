import type { JSX } from 'preact';
import { airDensity, DRAG_AREA, type Posture } from '../../../core/run/index.ts';
import { Quantity, Segments } from '../../kit/index.ts';
import { activePair, type Conditions, changeConditions, chosenPairs, conditions } from '../../state/index.ts';
import { altitudeOf } from './altitude.ts';
import { openProfile, openProgramme } from './files.ts';
import {
  chooseGhost,
  ghostPair,
  groundFile,
  groundKind,
  type ProgrammeKind,
  programmeFile,
  programmeKind,
  sheet,
  traverseDeg,
  turnShape,
} from './settings.ts';

const set = (label: string, key: keyof Conditions) => (value: number) =>
  changeConditions(label, { [key]: value }, key);

const PROGRAMMES: readonly { value: ProgrammeKind; label: string; title: string }[] = [
  { value: 'linked', label: 'Linked', title: 'Turn after turn by edge angle, period and shape' },
  { value: 'drawn', label: 'Drawn', title: 'Edge angle over time, drawn with handles' },
  { value: 'banked', label: 'Banked', title: 'No angulation: the skis lean with the body' },
  { value: 'file', label: 'CSV', title: 'Time in s and edge angle in degrees, from a file' },
];

/** What the skier does: the programme of edge angles. */
export function TurnControls(): JSX.Element {
  const c = conditions.value;
  const kind = programmeKind.value;
  return (
    <section class="control-group">
      <Segments
        label="Turns"
        value={kind}
        options={PROGRAMMES}
        onInput={next => {
          programmeKind.value = next;
          if (next === 'drawn') sheet.value = 'programme';
        }}
      />
      {kind === 'linked' && (
        <>
          <Quantity
            label="Edge angle at the peak"
            measure="angleDeg"
            value={c.edgeDeg}
            min={5}
            max={75}
            step={1}
            decimals={0}
            onInput={set('Edge angle', 'edgeDeg')}
          />
          <Quantity
            label="A right and a left turn take"
            measure="time"
            value={c.periodS}
            min={0.8}
            max={8}
            step={0.1}
            onInput={set('Period', 'periodS')}
          />
          <Segments
            label="Shape"
            value={turnShape.value}
            options={[
              { value: 'sine', label: 'Flowing' },
              { value: 'trapezoid', label: 'Held at the peak' },
            ]}
            onInput={next => {
              turnShape.value = next;
            }}
          />
        </>
      )}
      {(kind === 'linked' || kind === 'banked') && (
        <Quantity
          label="Turns"
          measure="count"
          value={c.turns}
          min={1}
          max={24}
          step={1}
          onInput={value => set('Turns', 'turns')(Math.max(1, Math.round(value)))}
        />
      )}
      {kind === 'banked' && (
        <Quantity
          label="Changes side at a traverse of"
          measure="angleDeg"
          value={traverseDeg.value}
          min={20}
          max={85}
          step={1}
          decimals={0}
          note="from the fall line"
          onInput={value => {
            traverseDeg.value = value;
          }}
        />
      )}
      {kind === 'drawn' && (
        <button
          type="button"
          onClick={() => {
            sheet.value = 'programme';
          }}
        >
          Draw the edge angle
        </button>
      )}
      {kind === 'file' && (
        <FileChoice
          name={programmeFile.value?.name}
          hint="Rows of time in s and edge angle in degrees, positive in right turns. Until a file is open, linked turns are skied."
          onOpen={openProgramme}
        />
      )}
    </section>
  );
}

/** The hill and the skier. */
export function HillControls(): JSX.Element {
  const c = conditions.value;
  const ground = groundKind.value;
  return (
    <details class="control-group" open>
      <summary>Hill</summary>
      <Segments
        label="Ground"
        labelHidden
        value={ground}
        options={[
          { value: 'even', label: 'Even' },
          { value: 'roller', label: 'Rollers', title: 'Invented ground, demo data' },
          { value: 'steepening', label: 'Steeper', title: 'Invented ground, demo data' },
          { value: 'file', label: 'CSV' },
        ]}
        onInput={next => {
          groundKind.value = next;
        }}
      />
      {ground === 'even' && (
        <Quantity
          label="Slope"
          measure="angleDeg"
          value={c.slopeDeg}
          min={0}
          max={45}
          step={1}
          decimals={0}
          onInput={set('Slope', 'slopeDeg')}
        />
      )}
      {(ground === 'roller' || ground === 'steepening') && (
        <p class="reading-hint">Pala Ostrelle, an invented hill (demo data).</p>
      )}
      {ground === 'file' && (
        <FileChoice
          name={groundFile.value?.name}
          hint="Rows of horizontal distance and height in m. Until a file is open, the even slope is skied."
          onOpen={openProfile}
        />
      )}
    </details>
  );
}

export function SkierControls(): JSX.Element {
  const c = conditions.value;
  const postures = Object.keys(DRAG_AREA) as Posture[];
  const posture = postures.find(each => DRAG_AREA[each] === c.dragAreaM2);
  return (
    <details class="control-group">
      <summary>Skier and air</summary>
      <Quantity
        label="Mass with equipment"
        measure="massKg"
        value={c.massKg}
        min={20}
        max={150}
        step={1}
        onInput={set('Mass', 'massKg')}
      />
      <Quantity
        label="Friction on snow"
        measure="number"
        value={c.friction}
        min={0}
        max={0.3}
        step={0.005}
        decimals={3}
        onInput={set('Friction', 'friction')}
      />
      <Segments<Posture | ''>
        label="Posture"
        labelHidden
        value={posture ?? ''}
        options={postures.map(value => ({
          value,
          label: value[0]!.toUpperCase() + value.slice(1),
          title: `Drag area ${DRAG_AREA[value]} m²`,
        }))}
        onInput={value => value && changeConditions('Posture', { dragAreaM2: DRAG_AREA[value] })}
      />
      <Quantity
        label="Drag area"
        measure="areaM2"
        value={c.dragAreaM2}
        min={0}
        max={1.2}
        step={0.01}
        note={
          posture === 'race stance'
            ? 'Race stance is a placeholder between the two measured ones.'
            : undefined
        }
        onInput={set('Drag area', 'dragAreaM2')}
      />
      <Quantity
        label="Altitude"
        measure="distance"
        value={altitudeOf(c.airDensity)}
        min={0}
        max={4500}
        step={100}
        decimals={0}
        note={`Air ${c.airDensity.toFixed(3)} kg/m³ (standard atmosphere)`}
        onInput={altitude => changeConditions('Altitude', { airDensity: airDensity(altitude) }, 'airDensity')}
      />
    </details>
  );
}

function FileChoice(props: { name: string | undefined; hint: string; onOpen(): void }): JSX.Element {
  return (
    <>
      <p class="reading-hint">{props.hint}</p>
      <p class="file-choice">
        <button type="button" onClick={props.onOpen}>
          Open CSV…
        </button>{' '}
        {props.name ?? 'no file open'}
      </p>
    </>
  );
}

/** Which other chosen pair goes along at the same time. */
export function GhostChoice(): JSX.Element | null {
  const others = chosenPairs.value.filter(pair => pair.id !== activePair.value?.id);
  if (others.length === 0) return null;
  return (
    <Segments
      label="Beside it"
      value={ghostPair.value?.id ?? ''}
      options={[
        { value: '', label: 'None' },
        ...others.map(pair => ({ value: pair.id, label: pair.mark.letter, title: pair.name })),
      ]}
      onInput={id => chooseGhost(id || null)}
    />
  );
}
