import { languages, say as sayTo } from '../../core/language/index.ts';

/** The language the program speaks, chosen here and nowhere else: shell, command line and page ask for it. */
export const LANGUAGE = languages.en;

/** A sentence, a label or a field at fault in that language. */
export const say = (said: Parameters<typeof sayTo>[0]): string => sayTo(said, { language: LANGUAGE });
