import { z } from 'zod';
import { ACTIONS } from './actions.ts';

// The content policy forbids evaluating text as code, which zod's compiled parsers would do.
z.config({ jitless: true });

/**
 * Every message that crosses the process boundary, once. Both sides parse what arrives with these
 * schemas, so neither trusts the other's types.
 */

/** Longest file accepted, in UTF-16 code units; a pair file is a few kilobytes. */
export const MAX_TEXT = 20_000_000;

const text = z.string().max(MAX_TEXT);
const fileName = z
  .string()
  .min(1)
  .max(200)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is refused
  .regex(/^[^\\/:*?"<>|\u0000-\u001f]+$/, 'a file name without folders or reserved characters');

/** Names a file without naming its path: the renderer never sees or chooses where things are. */
const token = z.string().min(1).max(100);

/** Parts of the work in progress by key; see `Host.draft`. */
const draftKey = z.string().min(1).max(300);
const draftRecords = z.record(draftKey, text);
const draftChanges = z.record(draftKey, text.nullable());

const openedFile = z.strictObject({
  token,
  name: z.string().min(1),
  text,
  /** What reading it took for granted, in a sentence. */
  note: z.string().max(200).optional(),
});
const savedFile = z.strictObject({ token, name: z.string().min(1) });
const recentFile = z.strictObject({ token, name: z.string().min(1), folder: z.string() });

/** What is being opened, so the chooser can offer the right files. */
const fileKind = z.enum(['any', 'skis', 'table', 'course']);

/** A file dropped on the window or handed over by the operating system, or why it could not be read. */
export const arrival = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), file: openedFile }),
  z.strictObject({ ok: z.literal(false), message: z.string() }),
]);

const command = z.enum(ACTIONS.map(({ name }) => name));

const nothing = z.void();

/** Renderer asks, main answers. */
export const requests = {
  open: { ask: z.strictObject({ kind: fileKind }), answer: z.array(openedFile) },
  reopen: { ask: z.strictObject({ token }), answer: openedFile },
  recent: { ask: nothing, answer: z.array(recentFile) },
  save: { ask: z.strictObject({ token, text }), answer: savedFile },
  saveAs: { ask: z.strictObject({ name: fileName, text }), answer: savedFile.nullable() },
  exportFile: {
    ask: z.strictObject({
      name: fileName,
      mime: z.string().regex(/^[a-z]+\/[a-z0-9.+-]+$/),
      data: z.union([text, z.custom<Uint8Array>(data => data instanceof Uint8Array)]),
    }),
    answer: z.boolean(),
  },
  printPdf: { ask: z.strictObject({ name: fileName }), answer: z.boolean() },
  dropped: { ask: z.strictObject({ path: z.string().min(1).max(4096) }), answer: openedFile },
  unsaved: { ask: z.strictObject({ names: z.array(z.string().max(200)).max(1000) }), answer: nothing },
  /** The page's answer to `closing`. */
  readyToClose: { ask: nothing, answer: nothing },
  readDraft: { ask: nothing, answer: draftRecords.nullable() },
  writeDraft: { ask: z.strictObject({ changes: draftChanges }), answer: nothing },
} as const;

/** Main tells, renderer listens. */
export const events = {
  command,
  arrival,
  /** Save everything, then say `readyToClose`; say nothing when something is left. */
  closing: z.null(),
} as const;

export type RequestName = keyof typeof requests;
export type Ask<N extends RequestName> = z.infer<(typeof requests)[N]['ask']>;
export type Answer<N extends RequestName> = z.infer<(typeof requests)[N]['answer']>;
export type EventName = keyof typeof events;
export type EventOf<N extends EventName> = z.infer<(typeof events)[N]>;

export type DraftRecords = Readonly<z.infer<typeof draftRecords>>;
export type DraftChanges = Readonly<z.infer<typeof draftChanges>>;
export type OpenedFile = z.infer<typeof openedFile>;
export type SavedFile = z.infer<typeof savedFile>;
export type RecentFile = z.infer<typeof recentFile>;
export type FileKind = z.infer<typeof fileKind>;
export type Arrival = z.infer<typeof arrival>;

/** An answer travels in an envelope, because a thrown error would lose its plain message on the way. */
export const envelope = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), value: z.unknown() }),
  z.strictObject({ ok: z.literal(false), message: z.string() }),
]);
export type Envelope = z.infer<typeof envelope>;

/** The one way a failed parse is told: which message, which field, what was expected. */
export function describeProblem(message: string, error: z.ZodError): string {
  const [first] = error.issues;
  const where = first?.path.length ? `${message}.${first.path.join('.')}` : message;
  return `${where}: ${first?.message ?? 'is not valid'}`;
}
