import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { balanceTex, type Working, workingInWords, workingTex } from '../../core/working/index.ts';
import { getHost } from '../host/index.ts';
import { errorWords, inWords, report, t } from '../state/index.ts';
import { Dialog } from './dialog.tsx';
import { Tex } from './math.tsx';
import { originText, printedValue, solvedText, statusText, workingText } from './working-text.ts';

const shown = signal<{ title: string; workings: readonly Working[] } | null>(null);

/** Opens the working of a reading: formula, inputs, result, source. */
export function showWorking(title: string, working: Working | readonly Working[]): void {
  shown.value = { title, workings: Array.isArray(working) ? working : [working as Working] };
}

/** The drawer that shows workings. The frame holds one. */
export function WorkingPanel(): JSX.Element | null {
  const open = shown.value;
  if (!open) return null;
  const text = () => open.workings.map(each => workingText(each, open.workings)).join('\n');
  const save = async () => {
    const name = `${open.title.toLowerCase().replace(/[^a-z0-9]+/g, '-')}-working.txt`;
    try {
      if (await getHost().exportFile(name, 'text/plain', text())) report(t('common.saved', { name }));
    } catch (error) {
      report(t('common.notSaved', { name, why: errorWords(error) }), 'error');
    }
  };
  return (
    <Dialog
      title={open.title}
      place="drawer"
      onClose={() => {
        shown.value = null;
      }}
      footer={
        <button type="button" onClick={save}>
          {t('kit.saveAsText')}
        </button>
      }
    >
      {open.workings.map(working => (
        <WorkingSheet key={working.key} working={working} beside={open.workings} />
      ))}
    </Dialog>
  );
}

function WorkingSheet(props: { working: Working; beside: readonly Working[] }): JSX.Element {
  const { working, beside } = props;
  const { title, inputs, note, source } = workingInWords(working, inWords);
  return (
    <article class="working">
      <h3>{title}</h3>
      <p class="working-formula">
        <Tex tex={workingTex(working)} display />
      </p>
      <table>
        <caption class="sr-only">{t('kit.inputs')}</caption>
        <tbody>
          {inputs.map(input => (
            <tr key={input.name}>
              <td>
                <Tex tex={input.symbol} />
              </td>
              <td class="working-number">{printedValue(input)}</td>
              <td>
                {input.meaning}
                {input.from && <span class="working-from"> {originText(input.from, beside)}</span>}
              </td>
            </tr>
          ))}
          <tr class="working-result">
            <td>
              <Tex tex={working.symbol} />
            </td>
            <td class="working-number">{printedValue(working.result)}</td>
            <td>{t('common.result')}</td>
          </tr>
        </tbody>
      </table>
      {working.solved && (
        <>
          <p>
            <strong>{t('kit.solved')}</strong> {solvedText(working, working.solved)}
          </p>
          {working.formula !== '' && (
            <p class="working-formula">
              <Tex tex={balanceTex(working)} display />
            </p>
          )}
        </>
      )}
      {note && <p>{note}</p>}
      <p class="working-source">
        <strong>{t('kit.source')}</strong> {source}
        <br />
        <span class="working-status">{statusText(working.status)}</span>
      </p>
    </article>
  );
}
