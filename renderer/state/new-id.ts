/** An id for a rack entry, unique over sessions. */
export const newId = (): string => crypto.randomUUID();
