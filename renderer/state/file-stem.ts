const LONGEST = 60;

/** A name as the first part of a file name: small letters and digits of any script, joined by hyphens. */
export const fileStem = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, LONGEST) || 'pair';
