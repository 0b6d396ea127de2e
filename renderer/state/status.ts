import { computed, type ReadonlySignal, signal } from '@preact/signals';

export interface Status {
  readonly text: string;
  readonly kind: 'note' | 'error';
  /** What it is about, for whoever takes it back once it no longer holds. */
  readonly about?: string;
}

/** The line in the frame's foot. */
export const status = signal<Status | null>(null);

/** Says something in the frame's foot. Errors stay until the next message; notes pass. */
export function report(text: string, kind: Status['kind'] = 'note', about?: string): void {
  status.value = { text, kind, ...(about === undefined ? {} : { about }) };
}

export interface Task {
  readonly label: string;
  /** 0–1, or null while it cannot be told. */
  readonly progress: number | null;
  cancel(): void;
}

const running = signal<ReadonlyMap<string, Task>>(new Map());

/** Long work under way, shown with its progress and a stop button in the frame's foot. */
export const tasks: ReadonlySignal<readonly Task[]> = computed(() => [...running.value.values()]);

/** Shows (or updates) a task; null takes it off. */
export function showTask(id: string, task: Task | null): void {
  const next = new Map(running.value);
  if (task) next.set(id, task);
  else next.delete(id);
  running.value = next;
}
