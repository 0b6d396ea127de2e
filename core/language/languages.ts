import { english } from './english.ts';
import type { Language } from './language.ts';

/** The languages there are. Another one is a file like `english.ts` and a line here. */
export const languages = {
  en: { locale: 'en-GB', texts: english },
} satisfies Record<string, Language>;
