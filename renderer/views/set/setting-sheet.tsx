import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { reachOf, siOf } from '../../../core/conditions/index.ts';
import { checkSetting, type SettingItem } from '../../../core/course/index.ts';
import { shownAs } from '../../../core/units/index.ts';
import { NumberCell } from '../../kit/index.ts';
import { VerdictMark } from '../../rules/index.ts';
import { changeCourse, course, inWords, t, view } from '../../state/index.ts';

type Level = 'men' | 'women' | 'children';

function levelOf(): Level {
  const { category } = course.value;
  return category === 'men' || category === 'women' ? category : 'children';
}

/** The course against the rules of setting. */
export function SettingSheet(): JSX.Element {
  const { gates, discipline, slopeDeg, gateWidthM } = course.value;
  const check = checkSetting(gates, {
    discipline,
    category: levelOf(),
    slope: siOf('courseSlopeDeg', slopeDeg),
    ...(gateWidthM === null ? {} : { gateWidth: gateWidthM }),
  });
  return (
    <>
      <div class="set-head">
        <strong>
          {t('set.settingHead', { discipline: { key: `discipline.${discipline}` }, level: levelOf() })}
        </strong>
        <VerdictMark verdict={check.verdict} />
        <GateWidth />
      </div>
      <div class="plain-scroll">
        <table class="plain-table">
          <caption class="sr-only">{inWords(check.edition)}</caption>
          <thead>
            <tr>
              <th scope="col">{t('set.rule')}</th>
              <th scope="col">{t('set.limit')}</th>
              <th scope="col">{t('set.found')}</th>
              <th scope="col">{t('set.verdict')}</th>
              <th scope="col">{t('set.howKnown')}</th>
            </tr>
          </thead>
          <tbody>
            {check.items.map(item => (
              <tr key={item.rule.key + item.limit.map(inWords).join()}>
                <th scope="row">{inWords(item.rule)}</th>
                <td>{item.limit.map(inWords).join(', ')}</td>
                <td>
                  {foundText(item)}
                  {item.gates.length > 0 && (
                    <span class="reading-note">
                      {t('set.atGates', {
                        gates: item.gates.slice(0, 6).join(', '),
                        more: Math.max(0, item.gates.length - 6),
                      })}
                    </span>
                  )}
                </td>
                <td>
                  <VerdictMark verdict={item.verdict} />
                </td>
                <td class="status">{t('set.status', { status: item.status })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="reading-hint">{t('set.settingNote', { edition: check.edition, caution: check.caution })}</p>
    </>
  );
}

function foundText({ found }: SettingItem): string {
  if (found === null) return t('rules.notGiven');
  const [least, most = least] = found;
  const [one, other] = [least!, most!].map(value => t('course.found', { value }));
  return one === other ? one! : t('course.from', { from: one!, to: other! });
}

/** Gate width is in no list of turning poles, so it may be said here. */
function GateWidth(): JSX.Element {
  const [problem, setProblem] = useState<string | null>(null);
  const { unit, factor } = shownAs('distance', view.value.system);
  const { gateWidthM } = course.value;
  const [least, most] = reachOf('gateWidthM');
  const tidy = (value: number) => Number(value.toFixed(2));
  const change = (width: number | null) =>
    changeCourse(t('condition.gateWidth'), before => ({ ...before, gateWidthM: width }), 'gateWidthM');
  return (
    <span class="gate-width">
      <span aria-hidden="true">{t('condition.gateWidth')}</span>
      <NumberCell
        label={t('condition.gateWidth')}
        unit={unit}
        value={gateWidthM === null ? null : tidy(gateWidthM * factor)}
        min={tidy(least * factor)}
        max={tidy(most * factor)}
        onProblem={setProblem}
        onClear={() => change(null)}
        onInput={value => change(value / factor)}
      />
      {unit}
      {problem && (
        <span class="problem" role="alert">
          {problem}
        </span>
      )}
    </span>
  );
}
