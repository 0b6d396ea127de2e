import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerRequests, type Handlers } from '../../../main/electron/channel.ts';
import { envelope, events, type RequestName, requests } from '../../../main/host/messages.ts';

const names = Object.keys(requests) as RequestName[];

describe('messages', () => {
  test.each([
    ['open', { kind: 'anything' }],
    ['save', { token: 'a', text: 5 }],
    ['save', { token: 'a', text: '', path: '/etc/passwd' }],
    ['saveAs', { name: '../up.json', text: '' }],
    ['saveAs', { name: 'C:\\up.json', text: '' }],
    ['exportFile', { name: 'a.png', mime: 'image/png', data: [1, 2] }],
    ['exportFile', { name: 'a.png', mime: 'not a kind', data: '' }],
    ['dropped', { path: '' }],
    ['unsaved', { names: 'Larch' }],
    ['recent', { token: 'a' }],
  ] as const)('%s refuses %j', (name, given) => {
    expect(requests[name].ask.safeParse(given).success).toBe(false);
  });

  test('no request with a body accepts arbitrary values', () => {
    const withBody = names.filter(name => !requests[name].ask.safeParse(undefined).success);
    expect(withBody.length).toBeGreaterThan(6);
    fc.assert(
      fc.property(fc.constantFrom(...withBody), fc.anything(), (name, given) => {
        expect(requests[name].ask.safeParse(given).success).toBe(false);
      }),
    );
  });

  test('a command outside the list is no command', () => {
    expect(events.command.safeParse('save').success).toBe(true);
    expect(events.command.safeParse('erase-disk').success).toBe(false);
  });
});

describe('the channel', () => {
  type Listener = (event: { ours: boolean }, ask?: unknown) => Promise<unknown>;

  function channel(overrides: Partial<Handlers>) {
    const listeners = new Map<string, Listener>();
    const calls: unknown[] = [];
    const handlers = Object.fromEntries(names.map(name => [name, (ask: unknown) => calls.push([name, ask])]));
    const ipcMain = {
      handle: (name: string, listener: unknown) => {
        listeners.set(name, listener as Listener);
      },
    };
    answerRequests(ipcMain as never, event => (event as unknown as { ours: boolean }).ours, {
      ...(handlers as unknown as Handlers),
      ...overrides,
    });
    const send = async (name: RequestName, ask: unknown, ours = true) =>
      envelope.parse(await listeners.get(name)?.({ ours }, ask));
    return { send, calls };
  }

  test('a foreign sender reaches no handler', async () => {
    const { send, calls } = channel({});
    expect(await send('recent', undefined, false)).toMatchObject({ ok: false });
    expect(calls).toEqual([]);
  });

  test('a message that does not parse reaches no handler and is told by its field', async () => {
    const { send, calls } = channel({});
    expect(await send('save', { token: 'a' })).toMatchObject({
      ok: false,
      message: expect.stringContaining('save.text'),
    });
    expect(calls).toEqual([]);
  });

  test('answers, and hands on a handler’s own words', async () => {
    const { send } = channel({
      readDraft: () => ({ rest: 'draft' }),
      reopen: () => Promise.reject(new Error('larch.pair.json could not be found')),
    });
    expect(await send('readDraft', undefined)).toEqual({ ok: true, value: { rest: 'draft' } });
    const refused = await send('reopen', { token: 'a' });
    expect(refused).toEqual({ ok: false, message: 'larch.pair.json could not be found' });
  });
});
