/** "1 gate", "56 gates". */
export const counted = (many: number, what: string): string => `${many} ${many === 1 ? what : `${what}s`}`;
