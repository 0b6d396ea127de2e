// @module-tag slow
import type { JSX } from 'preact';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type * as Languages from '../../core/language/languages.ts';
import { editions } from '../../core/rules/index.ts';
import { Frame } from '../../renderer/frame/frame.tsx';
import { actionKeys } from '../../renderer/frame/key-groups.ts';
import { AboutModel, HelpPanel } from '../../renderer/help/index.ts';
import { PairSheet } from '../../renderer/print/pair-sheet.tsx';
import { editPair, newPair, RackDialogs } from '../../renderer/rack/index.ts';
import { changeView, project } from '../../renderer/state/index.ts';
import { board, pages, views } from '../../renderer/views/index.ts';
import { bareTexts } from './bare-texts.ts';
import { beginDrawing, CHARTED, drawn, endDrawing, flex, nothing, set, slope } from './drawn-views.ts';

/** The only language is one made of English, in which every text stands in brackets. */
vi.mock('../../core/language/languages.ts', async original => {
  const { languages } = await original<typeof Languages>();
  const { pseudoOf } = await import('../core/language/pseudo.ts');
  return { languages: { en: pseudoOf(languages.en) } };
});
vi.mock('../../renderer/answers/threads.ts', () => import('./in-place.ts'));
vi.mock('../../renderer/kit/use-size.ts', () => ({
  useSize: () => [{ current: null }, { width: 560, height: 320 }],
}));

/** What people gave, which no language changes: names of pairs and gates, owners, notes, editions of limits. */
function givenNames(): string[] {
  const { rack, course, rackFile } = project.value;
  const given = rack.flatMap(({ pair }) => [pair.name, pair.notes ?? '', String(pair.owner ?? '')]);
  const rules = editions.flatMap(({ edition, notes = '', limits }) => [
    edition,
    notes,
    // Whether at least or at most is said with the limit.
    ...limits.flatMap(({ rule, source }) => [source, rule, rule.replace(/ at (least|most)$/, '')]),
  ]);
  const others = [rackFile?.name ?? '', course.name, ...course.gates.map(({ label }) => label)];
  // The longest first: a name may hold another.
  return [...given, ...rules, ...others].filter(name => name !== '').toSorted((a, b) => b.length - a.length);
}

const readingsOf = (id: string) => views.find(view => view.id === id)!.Readings;

/** Sheets without a chart. */
const OTHERS = [
  flex('layup'),
  slope('coach'),
  slope('energy'),
  ...(['pairs', 'worth', 'gates', 'edit', 'make', 'setting', 'rules'] as const).map(set),
];

/** Panels, dialogs and pages that stand beside the views. */
const BESIDE: readonly { where: string; Stage: () => JSX.Element | null; set(): void }[] = [
  { where: 'frame', Stage: () => <Frame />, set: nothing },
  {
    where: 'frame, imperial',
    Stage: () => <Frame />,
    set: () => changeView({ system: 'imperial' }),
  },
  ...views.map(({ id, question }) => ({
    where: `${id} readings`,
    Stage: () => {
      const Readings = readingsOf(id);
      return <Readings />;
    },
    set: () => changeView({ question, system: 'metric' }),
  })),
  { where: 'compare readings', Stage: () => <pages.compare.Readings />, set: nothing },
  { where: 'squad', Stage: () => <pages.squad.Stage />, set: nothing },
  { where: 'squad readings', Stage: () => <pages.squad.Readings />, set: nothing },
  {
    where: 'board',
    Stage: () => {
      const Board = board!;
      return <Board />;
    },
    set: nothing,
  },
  {
    where: 'help',
    Stage: () => <HelpPanel actions={actionKeys} />,
    set: nothing,
  },
  { where: 'about the model', Stage: () => <AboutModel />, set: nothing },
  { where: 'pair sheet', Stage: () => <PairSheet id={project.value.rack[0]!.id} />, set: nothing },
  { where: 'new pair', Stage: () => <RackDialogs />, set: newPair },
  { where: 'edit a pair', Stage: () => <RackDialogs />, set: () => editPair(project.value.rack[0]!.id) },
];

describe('in another language nothing stays in English', () => {
  beforeAll(beginDrawing);
  afterAll(endDrawing);

  test.each([...CHARTED, ...OTHERS, ...BESIDE])('$where', async view => {
    const html = await drawn(view);
    expect(html.length).toBeGreaterThan(200);
    expect(bareTexts(html, givenNames())).toEqual([]);
  });
});

test('a text in English is found in a tag, beside a bracket and in what is said of a picture', () => {
  expect(bareTexts('<p>Nothing is due.</p>', [])).toEqual(['Nothing is due.']);
  expect(bareTexts('<p>⟦Śáṽé·⟧ the pair</p>', [])).toEqual(['⟦Śáṽé·⟧ the pair']);
  expect(bareTexts('<svg aria-label="⟦Ćĥáŕť óƒ the tip·⟧"></svg>', [])).toHaveLength(1);
  expect(bareTexts('<p>Larch 155 <b>⟦ťúŕńś {12 m}··⟧</b> 13.2 m, SL</p>', ['Larch 155'])).toEqual([]);
});
