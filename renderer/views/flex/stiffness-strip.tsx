import type { JSX } from 'preact';
import { beamOf } from '../../answers/index.ts';
import { flexSheet } from '../../files/index.ts';
import { editPair } from '../../rack/index.ts';
import type { ChosenPair } from '../../state/index.ts';
import { t } from '../../state/index.ts';
import { type Field, field } from './bench.ts';
import { asStations, STARTING, setStiffness, stationsOffBy, withOneMore } from './stiffness-edits.ts';

/** Says how the active pair's stiffness is stated and what can be done with it. */
export function StiffnessStrip({ active }: { active: ChosenPair }): JSX.Element {
  const which = field.value;
  const fault = beamOf(active.pair)[which === 'bending' ? 'bendingFault' : 'torsionFault'];
  const kind = active.pair[which]?.kind;
  const plain = kind === 'stations' || kind === 'uniform';
  return (
    <div class="stiffness-strip">
      <p class={fault || !plain ? undefined : 'strip-hint'}>
        <strong>{active.mark.letter}</strong>{' '}
        {fault ? <span class="problem">{fault}</span> : <Stated active={active} which={which} />}
        {!fault && active.pair[which] && active.pair.plate && t('flex.plateAddsToIt')}
      </p>
      {active.readOnly === undefined && <Actions active={active} which={which} />}
    </div>
  );
}

function Stated({ active, which }: { active: ChosenPair; which: Field }): JSX.Element {
  const stiffness = active.pair[which];
  switch (stiffness?.kind) {
    case undefined:
      return <>{which === 'torsion' ? t('flex.noGj') : t('flex.noEi')}</>;
    case 'uniform':
      return <>{t('flex.stated.uniform')}</>;
    case 'stations':
      return <>{t('flex.stated.stations', { count: stiffness.stations.length })}</>;
    case 'formula':
      return <>{t('flex.stated.formula', { formula: stiffness.newtonM2 })}</>;
    case 'layup':
      return <>{t('flex.stated.layup', { count: stiffness.layers.length })}</>;
  }
}

function Actions({ active, which }: { active: ChosenPair; which: Field }): JSX.Element {
  const stiffness = active.pair[which];
  const profile = beamOf(active.pair).bare[which];
  const edit = (
    <button type="button" onClick={() => editPair(active.id)}>
      {stiffness?.kind === 'formula' ? t('flex.editFormula') : t('flex.editNumbers')}
    </button>
  );
  if (!stiffness) {
    return (
      <span class="strip-actions">
        <button
          type="button"
          onClick={() => setStiffness(active.id, which, { kind: 'uniform', newtonM2: STARTING[which] })}
        >
          {t('flex.startWith', { stiffness: STARTING[which] })}
        </button>
      </span>
    );
  }
  return (
    <span class="strip-actions">
      {stiffness.kind === 'stations' && profile && stiffness.stations.length < 40 && (
        <button type="button" onClick={() => setStiffness(active.id, which, withOneMore(stiffness, profile))}>
          {t('flex.addStation')}
        </button>
      )}
      {stiffness.kind !== 'stations' && profile && <TurnIntoStations active={active} which={which} />}
      {stiffness.kind === 'layup' ? (
        <button
          type="button"
          onClick={() => {
            flexSheet.value = 'layup';
          }}
        >
          {t('flex.showLayers')}
        </button>
      ) : (
        edit
      )}
    </span>
  );
}

/** Replaces the formula or layup; says beforehand how near the stations come. */
function TurnIntoStations({ active, which }: { active: ChosenPair; which: Field }): JSX.Element {
  const profile = beamOf(active.pair).bare[which]!;
  const { contactLengthMm } = active.pair;
  const off = stationsOffBy(profile, contactLengthMm);
  const within =
    off < 0.0005 ? t('flex.exact') : t('flex.within', { off: (Math.ceil(1000 * off) / 10).toFixed(1) });
  const stiffness = asStations(profile, contactLengthMm);
  const kind = active.pair[which]?.kind ?? 'uniform';
  return (
    <button
      type="button"
      title={t('flex.turnIntoHint', { kind, within })}
      onClick={() => setStiffness(active.id, which, stiffness)}
    >
      {t('flex.turnInto', { within })}
    </button>
  );
}
