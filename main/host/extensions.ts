/**
 * Endings of file names. A pair file is `NAME.pair.json` everywhere; Windows and macOS know a file's program only by
 * what follows the last dot, so the same text is opened and saved under an ending of its own too.
 */
export const skisExtensions = ['json', 'twpair', 'twrack'] as const;
export const tableExtensions = ['csv', 'tsv', 'txt'] as const;
export const openedExtensions = [...skisExtensions, ...tableExtensions] as const;

const SKIS = new RegExp(`\\.(${skisExtensions.join('|')})$`, 'i');

/** Whether a name is one that a pair, a rack or an edition of limits may have. */
export const isSkisName = (name: string): boolean => SKIS.test(name);
