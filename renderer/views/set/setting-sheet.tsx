import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { checkSetting, type SettingItem } from '../../../core/course/index.ts';
import { formatQuantity, parseQuantity } from '../../format/index.ts';
import { conditions, course, view } from '../../state/index.ts';
import { category, VerdictMark } from '../rules/index.ts';
import { gateWidth } from './set-state.ts';

type Level = 'men' | 'women' | 'children';

const levelOf = (): Level =>
  category.value === 'men' || category.value === 'women' ? category.value : 'children';

/** The course against the rules of setting. */
export function SettingSheet(): JSX.Element {
  const { gates, discipline } = course.value;
  const check = checkSetting(gates, {
    discipline,
    category: levelOf(),
    slope: (conditions.value.slopeDeg * Math.PI) / 180,
    ...(gateWidth.value === null ? {} : { gateWidth: gateWidth.value }),
  });
  return (
    <>
      <div class="set-head">
        <strong>
          {discipline === 'SL' ? 'Slalom' : 'Giant slalom'}, {levelOf()}
        </strong>
        <VerdictMark verdict={check.verdict} />
        <GateWidth />
      </div>
      <div class="plain-scroll">
        <table class="plain-table">
          <caption class="sr-only">{check.edition}</caption>
          <thead>
            <tr>
              <th scope="col">Rule</th>
              <th scope="col">Limit</th>
              <th scope="col">Found</th>
              <th scope="col">Verdict</th>
              <th scope="col">The limit is</th>
            </tr>
          </thead>
          <tbody>
            {check.items.map(item => (
              <tr key={`${item.rule} ${item.limit}`}>
                <th scope="row">{item.rule}</th>
                <td>{item.limit}</td>
                <td>
                  {foundText(item)}
                  {item.gates.length > 0 && (
                    <span class="reading-note">
                      gates {item.gates.slice(0, 6).join(', ')}
                      {item.gates.length > 6 && ` and ${item.gates.length - 6} more`}
                    </span>
                  )}
                </td>
                <td>
                  <VerdictMark verdict={item.verdict} />
                </td>
                <td class="status">{item.status === 'from memory' ? 'from memory, confirm' : item.status}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="reading-hint">
        {check.edition}. The category is the one of the rule check; slope from the readings. {check.caution}
      </p>
    </>
  );
}

function foundText({ found, unit }: SettingItem): string {
  if (!found) return 'not given';
  const { system } = view.value;
  const one = (value: number) =>
    unit === 'm'
      ? formatQuantity(value, 'distance', { system }).text
      : `${unit === 'turns' ? value : value.toFixed(0)} ${unit}`;
  return found[0] === found[1] ? one(found[0]) : `${one(found[0])} to ${one(found[1])}`;
}

/** Gate width is in no list of turning poles, so it may be said here. */
function GateWidth(): JSX.Element {
  const { system } = view.value;
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const given = gateWidth.value;
  const read = (text: string) => {
    setDraft(text);
    if (text.trim() === '') {
      gateWidth.value = null;
      setProblem(null);
      return;
    }
    const parsed = parseQuantity(text, 'distance', system);
    if (!parsed.ok) setProblem(parsed.reason);
    else if (!(parsed.value > 0 && parsed.value <= 20))
      setProblem(`${text} found; a width up to 20 m is accepted`);
    else {
      setProblem(null);
      gateWidth.value = parsed.value;
    }
  };
  return (
    <label class="gate-width">
      <span>Gate width</span>
      <input
        class="number-cell"
        inputMode="decimal"
        autoComplete="off"
        placeholder="not given"
        aria-invalid={problem !== null}
        value={draft ?? (given === null ? '' : formatQuantity(given, 'distance', { system }).value)}
        onInput={event => read(event.currentTarget.value)}
        onBlur={() => {
          setDraft(null);
          setProblem(null);
        }}
      />
      {formatQuantity(1, 'distance', { system }).unit}
      {problem && (
        <span class="problem" role="alert">
          {problem}
        </span>
      )}
    </label>
  );
}
