import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { beamOf, identified, readOf, uncertaintyMm } from '../../answers/index.ts';
import { openFiles } from '../../files/index.ts';
import { Quantity } from '../../kit/index.ts';
import { type ChosenPair, inWords, readingsOf, t } from '../../state/index.ts';
import { exampleRows } from './bench-rows.ts';
import { IdentifyResult } from './identify-result.tsx';
import { STARTING } from './stiffness-edits.ts';

/** Headings and a row as a person types them. */
const EXAMPLE = 'loadFromTailMm,loadN,dialFromTailMm,deflectionMm\n300,100,300,5.31\n…';

/** Bench readings in, the bending profile that explains them out, with what they cannot tell. */
export function IdentifySheet({ active }: { active: ChosenPair }): JSX.Element {
  const read = readOf(active);
  const { value, error } = identified.value;
  const found = read?.ok && value?.id === active.id ? value : null;
  const problem =
    read?.ok === false ? inWords(read.fault) : found?.ok === false ? inWords(found.fault) : error;
  return (
    <div class="stage-split">
      <RowsEntry active={active} problem={problem} />
      <IdentifyResult active={active} found={found?.ok ? found : null} />
    </div>
  );
}

function RowsEntry({ active, problem }: { active: ChosenPair; problem: string | null }): JSX.Element {
  const text = readingsOf(active.id);
  const over = useSignal(false);
  const example = () => {
    const profile = beamOf(active.pair).bending ?? (() => STARTING.bending);
    text.value = exampleRows(profile, active.ski.contactLength);
  };
  return (
    <section class="flex-panel rows-entry" aria-label={t('flex.benchReadings')}>
      <div class="figure-head">
        <h2>{t('flex.readingsOf', { letter: active.mark.letter })}</h2>
        <button type="button" onClick={() => void openFiles('bench')}>
          {t('flex.openTable')}
        </button>
      </div>
      <textarea
        aria-label={t('flex.rowsLabel')}
        aria-invalid={problem !== null}
        spellcheck={false}
        class={over.value ? 'over' : undefined}
        placeholder={`${t('flex.pasteTable')}\n\n${EXAMPLE}\n\n${t('flex.supportsMayFollow', { columns: ['rearSupportMm', 'frontSupportMm'] })}`}
        value={text.value}
        onInput={event => {
          text.value = event.currentTarget.value;
        }}
      />
      {problem && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      <div class="rows-foot">
        <Quantity
          label={t('flex.goodTo')}
          measure="widthMm"
          decimals={2}
          value={uncertaintyMm.value}
          min={0.01}
          max={2}
          log
          onInput={value => {
            uncertaintyMm.value = value;
          }}
        />
        {!text.value.trim() && (
          <button type="button" onClick={example}>
            {t('flex.fillIn')}
          </button>
        )}
      </div>
    </section>
  );
}
