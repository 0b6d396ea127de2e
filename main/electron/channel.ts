import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import {
  type Answer,
  type Ask,
  describeProblem,
  type Envelope,
  type RequestName,
  requests,
} from '../host/index.ts';

export type Handlers = { [N in RequestName]: (ask: Ask<N>) => Promise<Answer<N>> | Answer<N> };

/**
 * Answers every request of the seam. A message is answered only when its sender is ours and it parses;
 * whatever goes wrong travels back as a plain message.
 */
export function answerRequests(
  ipcMain: Pick<IpcMain, 'handle'>,
  isOurs: (event: IpcMainInvokeEvent) => boolean,
  handlers: Handlers,
): void {
  for (const name of Object.keys(requests) as RequestName[]) {
    ipcMain.handle(name, async (event, ...given: unknown[]): Promise<Envelope> => {
      if (!isOurs(event))
        return { ok: false, message: `${name}: refused, the sender is not the program's page` };
      const ask = requests[name].ask.safeParse(given[0]);
      if (!ask.success) return { ok: false, message: describeProblem(name, ask.error) };
      try {
        const handler = handlers[name] as (ask: unknown) => unknown;
        return { ok: true, value: await handler(ask.data) };
      } catch (error) {
        return { ok: false, message: error instanceof Error ? error.message : String(error) };
      }
    });
  }
}
